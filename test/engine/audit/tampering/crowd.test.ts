import { expect, test } from "vitest";
import { readWorkbook } from "../../../../engine/workbook/read/read.js";
import { crowdCases } from "./cases/crowd.js";
import { holds, newBook } from "./run.js";

test.each(crowdCases)("$verdict: $what", holds);

test("white text, by a look that comes after more than are read: the workbook is refused", () => {
  const book = newBook();
  const xfs = '<xf numFmtId="0" fontId="0" fillId="0" borderId="0"/>'.repeat(20_001);
  book.change("xl/styles.xml", (xml) => xml.replace("</cellXfs>", `${xfs}</cellXfs>`));
  expect(() => readWorkbook(book.bytes(), { look: true })).toThrow(/looks of cells; at most 20000/);
});
