import { inflateRawSync } from "node:zlib";
import { strFromU8, strToU8, unzipSync, zipSync } from "fflate";
import { expect, test } from "vitest";
import { WorkbookRefused } from "../../../../engine/workbook/read/refused.js";
import { Archive } from "../../../../engine/workbook/write/archive.js";
import { packedNow, packing, zipOf } from "../../../../engine/workbook/write/zip.js";

const long = "a line of text, ".repeat(5000);
const original = zipSync({
  "folder/": strToU8(""),
  "folder/long.xml": strToU8(long),
  "stored.bin": [strToU8("stored as it is"), { level: 0 }],
  "short.xml": strToU8("<short/>"),
});
const textsOf = (bytes: Uint8Array) =>
  Object.fromEntries(
    Object.entries(unzipSync(bytes)).map(([name, part]) => [name, strFromU8(part)]),
  );

test("what nobody changes stays, in its order, and what is put is there", () => {
  const archive = new Archive(original);
  expect(archive.names).toEqual(["folder/long.xml", "stored.bin", "short.xml"]);
  expect(archive.text("short.xml")).toBe("<short/>");
  archive.put("short.xml", "<other/>");
  archive.put("new.bin", new Uint8Array([1, 2, 3]));
  expect([archive.text("short.xml"), archive.has("new.bin"), archive.has("x")]).toEqual([
    "<other/>",
    true,
    false,
  ]);
  expect(textsOf(archive.packed())).toEqual({
    "folder/long.xml": long,
    "stored.bin": "stored as it is",
    "short.xml": "<other/>",
    "new.bin": "\u0001\u0002\u0003",
  });
  expect(Buffer.from(archive.packed()).equals(archive.packed())).toBe(true);
  expect(() => archive.text("x")).toThrow("no part x");
});

test("an archive that is cut off is refused", () => {
  expect(() => new Archive(original.subarray(0, original.length - 30))).toThrow(WorkbookRefused);
});

test("on another thread and at once files are packed alike, and come back as they were", async () => {
  for (const text of ["", "short", long]) {
    const bytes = strToU8(text);
    const file = packedNow("a.xml", bytes, 6);
    expect(await packing("a.xml", bytes, 6)).toEqual(file);
    expect(inflateRawSync(file.deflated).toString()).toBe(text);
    const names = ["a.xml", "größer.xml"];
    const made = zipOf(names.map((name) => packedNow(name, bytes, text === long ? 0 : 6)));
    expect(textsOf(made)).toEqual({ "a.xml": text, "größer.xml": text });
    expect(new Archive(made).names).toEqual(names);
  }
});
