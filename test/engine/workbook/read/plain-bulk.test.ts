import fc from "fast-check";
import { expect, test } from "vitest";
import { plainRowsIn } from "../../../../engine/workbook/read/plain-rows.js";
import { plainStringsIn } from "../../../../engine/workbook/read/plain-strings.js";
import { readWorkbook } from "../../../../engine/workbook/read/read.js";
import { parts, zipped } from "./build.js";

/** What is read, or the refusal. A comment at the very end leaves a part to the reader of any XML. */
function outcome(sheet: string, strings: string, end: string): unknown {
  const made = parts({ sheets: { Pump: `${sheet}${end}` }, strings: `${strings}${end}` });
  const open = 'xmlns:x14ac="urn:x14ac"';
  const part = "xl/worksheets/sheet1.xml";
  const spelled = {
    ...made,
    [part]: String(made[part]).replace("<worksheet ", `<worksheet ${open} `),
  };
  try {
    const { sheets } = readWorkbook(zipped(spelled), { formulas: false });
    return sheets.map(({ cells, ...rest }) => ({ ...rest, cells: [...cells] }));
  } catch (error) {
    return error instanceof Error
      ? `${(error as { code?: string }).code}: ${error.message}`
      : error;
  }
}

const comment = "<!-- not plain -->";
const data = (rows: string) => `<cols/><sheetData>${rows}</sheetData><pageMargins left="1"/>`;
const texts =
  '<si><t>one</t></si><si><t xml:space="preserve"> two &amp; &#x41;_x000D_</t></si><si><t/></si>';

/** Is each of the two taken at one go? */
const isTaken = (sheet: string, strings: string) => [
  plainRowsIn(`<worksheet xmlns:x14ac="urn:x14ac">${sheet}</worksheet>`) !== undefined,
  plainStringsIn(`<sst xmlns="urn:a">${strings}</sst>`) !== undefined,
];

test.each([
  [
    "numbers, texts, yes or no, errors",
    '<row r="1"><c r="A1" s="3"><v>1.5</v></c><c r="B1" t="s"><v>1</v></c><c r="C1" t="b"><v>1</v></c><c r="D1" t="e"><v>#N/A</v></c><c r="E1" s="4"/></row>',
  ],
  [
    "formulas",
    '<row r="2" spans="1:3" ht="12.5" customHeight="1" x14ac:dyDescent="0.25"><c r="B2" t="str"><f>IF(A1&gt;"",1,2)</f><v>a&lt;b _x0041_</v></c><c r="C2"><f t="shared" ref="C2:C3" si="0"/><v>2</v></c><c r="D2"><f aca="false">1</f></c></row>',
  ],
  [
    "hidden rows, empty rows, rows left out",
    '<row r="3" hidden="1"/><row r="7" hidden="false"></row><row><c r="A8"><v>1</v></c></row>',
  ],
  ["columns out of order", '<row r="1"><c r="C1"><v>3</v></c><c r="A1"><v>1</v></c></row>'],
  ["nothing", ""],
])("taken at one go, as any XML is read: %s", (_, rows) => {
  expect(isTaken(data(rows), texts)).toEqual([true, true]);
  const found = outcome(data(rows), texts, "");
  expect(found).toEqual(outcome(data(rows), texts, comment));
  expect(typeof found).toBe("object");
});

test.each([
  ["a cell twice", '<row r="1"><c r="A1"><v>1</v></c><c r="A1"><v>2</v></c></row>'],
  ["a cell in another row", '<row r="1"><c r="A2"><v>1</v></c></row>'],
  ["a column beyond the last", '<row r="1"><c r="ZZZ1"><v>1</v></c></row>'],
  ["a row beyond the last", '<row r="9999999"><c r="A1"><v>1</v></c></row>'],
  ["no number", '<row r="1"><c r="A1"><v>1,5</v></c></row>'],
  ["a text that is not there", '<row r="1"><c r="A1" t="s"><v>3</v></c></row>'],
  ["an unknown type", '<row r="1"><c r="A1" t="z"><v>3</v></c></row>'],
])("refused in the same words: %s", (_, rows) => {
  expect(isTaken(data(rows), texts)[0]).toBe(true);
  const found = outcome(data(rows), texts, "");
  expect(found).toMatch(/^workbook-/);
  expect(found).toEqual(outcome(data(rows), texts, comment));
});

test.each([
  ["an attribute twice", '<row r="1" r="1"><c r="A1"><v>1</v></c></row>'],
  [
    "an attribute of a formula twice",
    '<row r="1"><c r="A1"><f t="a" t="b">1</f><v>1</v></c></row>',
  ],
  ["a namespace of a formula", '<row r="1"><c r="A1"><f xmlns="urn:b">1</f><v>1</v></c></row>'],
  ["a namespace", '<row xmlns="urn:b" r="1"><c r="A1"><v>1</v></c></row>'],
  ["an element within a value", '<row r="1"><c r="A1"><v><b/>1</v></c></row>'],
  ["two values", '<row r="1"><c r="A1"><v>1</v><v>1</v></c></row>'],
  ["text between cells", '<row r="1">x<c r="A1"><v>1</v></c></row>'],
  ["an entity of its own", '<row r="1"><c r="A1" t="str"><v>&own;</v></c></row>'],
  ["a character that is none", '<row r="1"><c r="A1" t="str"><v>&#0;</v></c></row>'],
  ["an end of CDATA", '<row r="1"><c r="A1" t="str"><v>]]></v></c></row>'],
  ["rows that do not end", '<row r="1"><c r="A1"><v>1</v></c>'],
  ["text in place", '<row r="1"><c r="A1" t="inlineStr"><is><t>a</t></is></c></row>'],
])("left to the reader of any XML: %s", (_, rows) => {
  expect(isTaken(data(rows), texts)[0]).toBe(false);
  expect(outcome(data(rows), texts, "")).toEqual(outcome(data(rows), texts, comment));
});

test.each([
  "<si><r><t>a</t></r><r><t>b</t></r></si>",
  '<si><t xml:space="preserve" xml:space="preserve">a</t></si>',
  "<si><t>a</t><rPh><t>b</t></rPh></si>",
  "<si>\n<t>a</t></si>",
  "<si><t>&own;</t></si>",
  "<si><t>a</si>",
])("shared texts that are left to it: %s", (strings) => {
  const sheet = data('<row r="1"><c r="A1" t="s"><v>0</v></c></row>');
  expect(isTaken(sheet, strings)[1]).toBe(false);
  expect(outcome(sheet, strings, "")).toEqual(outcome(sheet, strings, comment));
});

test("whatever a row or a text is made of, both ways of reading give the same", () => {
  const pieces = [
    ...['<row r="1">', '<row r="2" hidden="1">', "<row>", "</row>", "<row/>", '<row r="0">'],
    ...['<c r="A1"><v>1</v></c>', '<c r="B2" s="1" t="s"><v>0</v></c>', '<c r="A2"/>', "<c/>"],
    ...['<c r="C1" t="str"><f>1</f><v>', "a&amp;b", "</v></c>", "&#65;", " ", "<v>", "<!-- -->"],
  ];
  const words = ["<si>", "</si>", "<t>", "</t>", "<si><t>a</t></si>", "<t/>", " ", "&lt;", "<r/>"];
  const some = (from: readonly string[]) =>
    fc.array(fc.constantFrom(...from), { maxLength: 7 }).map((all) => all.join(""));
  fc.assert(
    fc.property(some(pieces), some(words), (rows, strings) => {
      const all = `<si><t>z</t></si>${strings}`;
      expect(outcome(data(rows), all, "")).toEqual(outcome(data(rows), all, comment));
    }),
    { seed: 20262, numRuns: 300 },
  );
});
