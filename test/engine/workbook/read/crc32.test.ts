import { expect, test } from "vitest";
import { crc32, crc32ByTable } from "../../../../engine/workbook/read/crc32.js";

// The check value of CRC-32 is that of the digits 1 to 9 (Rocksoft model, from memory).
test.each([
  ["", 0],
  ["123456789", 0xcbf43926],
])("CRC-32 of %j", (text, value) => {
  const bytes = new TextEncoder().encode(text);
  expect([crc32(bytes), crc32ByTable(bytes)]).toEqual([value, value]);
});
