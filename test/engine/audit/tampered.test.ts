import { expect, test } from "vitest";
import { auditWorkbook } from "../../../engine/audit/audit.js";
import type { Finding, Grade } from "../../../engine/audit/finding.js";
import type { FindingCode } from "../../../engine/audit/finding-codes.js";
import { readWorkbook } from "../../../engine/workbook/read/read.js";
import { fence, fenceBook } from "../../support/fence.js";
import { fenceModel, fenceWorkbook } from "../../support/fence-bid.js";
import { inlineText, Tampered } from "../../support/tamper.js";

// Workbooks changed behind the program's back, one thing each. What an audit must find: nothing else
// may be found above the grade "to know" but what is listed as following from it.

const clean = await fenceWorkbook();
const number = (value: number) => () => `<v>${value}</v>`;
const keepFormula = (value: string) => (inside: string) =>
  inside.replace(/<v>.*<\/v>/, `<v>${value}</v>`);

interface Case {
  readonly what: string;
  readonly edit: (book: Tampered) => unknown;
  readonly finds: { grade: Grade; code: FindingCode; name?: string; where?: string };
  /** What follows from the change, and may be found too. */
  readonly also?: readonly FindingCode[];
}

const cases: readonly Case[] = [
  {
    what: "a formula replaced by its number",
    edit: (book) => book.cell("materials", number(1569.61)),
    finds: { grade: "wrong", code: "formula-overwritten", name: "materials" },
    also: ["value-stale"],
  },
  {
    what: "the price typed in, lower",
    edit: (book) => book.cell("price", number(3500)),
    finds: { grade: "wrong", code: "formula-overwritten", name: "price" },
    also: ["value-stale"],
  },
  {
    what: "a factor changed",
    edit: (book) => book.formula("labor", (formula) => formula.replace("75", "7.5")),
    finds: { grade: "wrong", code: "formula-edited", name: "labor" },
  },
  {
    what: "a sign flipped",
    edit: (book) => book.formula("price", (formula) => formula.replace("1-margin", "1+margin")),
    finds: { grade: "wrong", code: "formula-edited", name: "price" },
  },
  {
    what: "the branches of an IF swapped",
    edit: (book) => book.formula("labor", (formula) => formula.replace("500,0", "0,500")),
    finds: { grade: "wrong", code: "formula-edited", name: "labor" },
  },
  {
    what: "a comparison turned",
    edit: (book) => book.formula("strong_enough", (formula) => formula.replace("&lt;=", "&gt;=")),
    finds: { grade: "wrong", code: "formula-edited", name: "strong_enough" },
  },
  {
    what: "a range cut short",
    edit: (book) => book.formula("total_run", (formula) => formula.replace("runs.run", "B7:B8")),
    finds: { grade: "wrong", code: "formula-edited", name: "total_run" },
  },
  {
    what: "a formula within a row of a table changed",
    edit: (book) => book.formula("runs.face[2]", (formula) => formula.replace("height", "4")),
    finds: { grade: "wrong", code: "formula-edited", name: "runs.face[2]" },
  },
  {
    what: "a formula that reads the row above it, twice over",
    edit: (book) => book.formula("runs.so_far[3]", (formula) => formula.replace("F8", "F7")),
    finds: { grade: "wrong", code: "formula-edited", name: "runs.so_far[3]" },
  },
  {
    what: "a formula deleted",
    edit: (book) => book.cell("total_posts", () => "", "n"),
    finds: { grade: "wrong", code: "formula-missing", name: "total_posts" },
    also: ["value-stale", "check-failed"],
  },
  {
    what: "a check overwritten by TRUE",
    edit: (book) => book.cell("strong_enough", () => "<v>1</v>", "b"),
    finds: { grade: "wrong", code: "formula-overwritten", name: "strong_enough" },
  },
  {
    what: "the message of a check silenced",
    edit: (book) => book.cell("strong_enough_message", () => inlineText("ok"), "inlineStr"),
    finds: { grade: "wrong", code: "formula-overwritten", name: "strong_enough_message" },
  },
  {
    what: "a stored result changed",
    edit: (book) => book.cell("price", keepFormula("3500")),
    finds: { grade: "wrong", code: "value-stale", name: "price" },
  },
  {
    what: "a stored text changed",
    edit: (book) => book.cell("offer", keepFormula("A gate")),
    finds: { grade: "wrong", code: "value-stale", name: "offer" },
  },
  {
    what: "a stored result in the 8th digit",
    edit: (book) => book.cell("price", keepFormula("4087.0156")),
    finds: { grade: "wrong", code: "value-stale", name: "price" },
  },
  {
    what: "a published figure changed",
    edit: (book) => book.cell("soils.spacing[3]", number(12)),
    finds: { grade: "wrong", code: "published-changed", name: "soils.spacing[3]" },
    also: ["value-stale"],
  },
  {
    what: "a price changed",
    edit: (book) => book.cell("items.unit_price[1]", number(19.35)),
    finds: { grade: "wrong", code: "price-changed", name: "items.unit_price[1]" },
    also: ["value-stale"],
  },
  {
    what: "the day until which a quote is good put off",
    edit: (book) => book.cell("items.good_until[2]", number(47500)),
    finds: { grade: "wrong", code: "price-changed", name: "items.good_until[2]" },
  },
  {
    what: "a quote that ran out before the bid",
    edit: (book) => book.cell("bid_date", number(46400)),
    finds: { grade: "wrong", code: "check-failed", name: "takeoff.quoted[1]" },
    also: ["value-stale", "input-untold"],
  },
  {
    what: "an input changed without the trail",
    edit: (book) => book.cell("runs.run[1]", number(51.7)),
    finds: { grade: "doubtful", code: "input-untold", name: "runs.run[1]" },
    also: ["value-stale"],
  },
  {
    what: "an input that is a formula",
    edit: (book) => book.cell("height", () => "<f>11/2</f><v>5.5</v>"),
    finds: { grade: "doubtful", code: "input-formula", name: "height" },
  },
  {
    what: "a name pointed to another cell",
    edit: (book) =>
      book.change("xl/workbook.xml", (xml) =>
        xml.replace(/(<definedName name="wind">Site!\$B\$)8/, "$17"),
      ),
    finds: { grade: "wrong", code: "name-moved", name: "wind" },
    also: ["value-stale", "input-untold"],
  },
  {
    what: "a name deleted",
    edit: (book) =>
      book.change("xl/workbook.xml", (xml) =>
        xml.replace(/<definedName name="margin">.*?<\/definedName>/, ""),
      ),
    finds: { grade: "wrong", code: "name-missing", name: "margin" },
    also: ["value-stale", "check-failed"],
  },
  {
    what: "a name broken by a deleted cell",
    edit: (book) =>
      book.change("xl/workbook.xml", (xml) =>
        xml.replace(/(<definedName name="margin">)[^<]*/, "$1Price!#REF!"),
      ),
    finds: { grade: "wrong", code: "name-missing", name: "margin" },
    also: ["value-stale", "check-failed"],
  },
  {
    what: "a name of a sheet that hides the workbook's",
    edit: (book) =>
      book.change("xl/workbook.xml", (xml) =>
        xml.replace(
          "<definedNames>",
          '<definedNames><definedName name="margin" localSheetId="3">Price!$B$4</definedName>',
        ),
      ),
    finds: { grade: "wrong", code: "name-moved", name: "margin" },
  },
  {
    what: "an extra name",
    edit: (book) =>
      book.change("xl/workbook.xml", (xml) =>
        xml.replace("<definedNames>", '<definedNames><definedName name="fudge">0.9</definedName>'),
      ),
    finds: { grade: "doubtful", code: "name-extra", where: "name fudge" },
  },
  {
    what: "the last row of a table deleted",
    edit: (book) =>
      book.change("xl/workbook.xml", (xml) =>
        xml.replace(/(<definedName name="runs\.[a-z_]+">Runs!\$[A-Z]+\$7:\$[A-Z]+\$)11/g, "$110"),
      ),
    finds: { grade: "wrong", code: "row-missing", where: "table row runs[5]" },
    also: ["formula-edited"],
  },
  {
    what: "an entry of the trail edited",
    edit: (book) =>
      book.change("xl/sharedStrings.xml", (xml) => xml.replace("measured on site", "drawing")),
    finds: { grade: "wrong", code: "trail", where: "the trail" },
  },
  {
    what: "a value in the trail edited, and its baseline with it",
    edit: (book) => book.sheet("Trail", (xml) => xml.replaceAll("<v>61.7</v>", "<v>60.7</v>")),
    finds: { grade: "wrong", code: "trail", where: "the trail" },
    also: ["input-untold"],
  },
  {
    what: "the end of the trail cut off",
    edit: (book) =>
      book.sheet("Trail", (xml) => {
        const rows = [...xml.matchAll(/<row [^>]*>.*?<\/row>/g)].map(([row]) => row);
        return xml.replace(rows.at(-1) as string, "");
      }),
    finds: { grade: "wrong", code: "trail", where: "the trail" },
    also: ["input-untold"],
  },
  {
    what: "the sheet Trail renamed away",
    edit: (book) =>
      book.change("xl/workbook.xml", (xml) => xml.replaceAll('name="Trail"', 'name="Notes"')),
    finds: { grade: "wrong", code: "trail", where: "the trail" },
    also: ["sheet-missing", "sheet-extra"],
  },
  {
    what: "a sheet hidden",
    edit: (book) =>
      book.change("xl/workbook.xml", (xml) =>
        xml.replace(/(<sheet [^>]*name="Price"[^>]*?)state="visible"/, '$1state="hidden"'),
      ),
    finds: { grade: "doubtful", code: "hidden", where: "sheet Price" },
  },
  {
    what: "a column hidden",
    edit: (book) =>
      book.sheet("Price", (xml) => xml.replace('<col min="1"', '<col hidden="1" min="1"')),
    finds: { grade: "doubtful", code: "hidden", where: "sheet Price" },
  },
  {
    what: "a row hidden",
    edit: (book) => book.sheet("Runs", (xml) => xml.replace('<row r="8"', '<row hidden="1" r="8"')),
    finds: { grade: "doubtful", code: "hidden", where: "sheet Runs" },
  },
  {
    what: "the template's name taken out of the properties",
    edit: (book) =>
      book.change("docProps/custom.xml", (xml) =>
        xml.replace(/<property [^>]*name="rillbook template">.*?<\/property>/, ""),
      ),
    finds: { grade: "wrong", code: "template", where: "custom properties" },
  },
  {
    what: "another version of the template",
    edit: (book) =>
      book.change("docProps/custom.xml", (xml) =>
        xml.replace(/(name="rillbook version"><vt:lpwstr>)3/, "$12"),
      ),
    finds: { grade: "wrong", code: "template", where: "custom properties" },
  },
  {
    what: "the mark of the office book taken out",
    edit: (book) =>
      book.change("docProps/custom.xml", (xml) =>
        xml.replace(/<property [^>]*name="rillbook office book mark">.*?<\/property>/, ""),
      ),
    finds: { grade: "wrong", code: "property", where: "custom properties" },
    also: ["office-book"],
  },
  {
    what: "the unit beside a figure changed",
    edit: (book) => book.at("Site", "C7", () => inlineText("m"), "inlineStr"),
    finds: { grade: "doubtful", code: "text-changed", where: "Site!C7" },
  },
  {
    what: "the headline figure on the first sheet typed over",
    edit: (book) => book.at("Summary", "D10", number(3500)),
    finds: { grade: "wrong", code: "formula-overwritten", where: "Summary!D10" },
  },
  {
    what: "a remark beside the figures",
    edit: (book) =>
      book.sheet("Price", (xml) =>
        xml.replace(
          /(<row r="4"[^>]*>.*?)<\/row>/,
          `$1<c r="Z4" t="inlineStr">${inlineText("see me")}</c></row>`,
        ),
      ),
    finds: { grade: "to know", code: "note", where: "Price!Z4" },
  },
  {
    what: "the rules for what may be typed taken off",
    edit: (book) =>
      book.sheet("Site", (xml) => xml.replace(/<dataValidations.*<\/dataValidations>/, "")),
    finds: { grade: "to know", code: "rule-missing" },
  },
];

test.each(cases)("$what", async ({ edit, finds, also = [] }) => {
  const book = new Tampered(clean, fenceModel);
  edit(book);
  const audit = await auditWorkbook(readWorkbook(book.bytes()), [fence], { book: fenceBook });
  expect(audit.findings).toContainEqual(expect.objectContaining(finds));
  expect(audit.clean).toBe(finds.grade === "to know");
  const grave = audit.findings.filter(({ grade }) => grade !== "to know");
  expect(grave.filter(({ code }) => code !== finds.code && !also.includes(code))).toEqual([]);
  for (const finding of audit.findings) expect(faultsOf(finding)).toEqual([]);
});

/** Every finding says where, what was found, what was expected and what to do. */
function faultsOf({ where, found, expected, advice }: Finding): string[] {
  return [where, found, expected, advice].filter((text) => text.trim() === "");
}

test("there are cases enough", () => {
  expect(cases.length).toBeGreaterThanOrEqual(25);
});

test("the workbook as written has no finding but what is to know", async () => {
  const audit = await auditWorkbook(readWorkbook(clean), [fence], { book: fenceBook });
  expect(audit.findings.map(({ grade, code }) => [grade, code])).toEqual([
    ["to know", "input-assumed"],
    ["to know", "input-assumed"],
  ]);
  expect(audit.clean).toBe(true);
  expect(audit.headline[0]?.shown).toBe(audit.headline[0]?.byTemplate);
});

test("a whole column overwritten is one finding", async () => {
  const book = new Tampered(clean, fenceModel);
  for (let row = 1; row <= 5; row++) book.cell(`runs.face[${row}]`, number(100));
  const audit = await auditWorkbook(readWorkbook(book.bytes()), [fence], { book: fenceBook });
  const found = audit.findings.filter(({ code }) => code === "formula-overwritten");
  expect(found.map(({ where }) => where)).toEqual([
    "5 cells: runs.face[1], runs.face[2], runs.face[3], runs.face[4], runs.face[5]",
  ]);
});

test("what the price would be by the template is told", async () => {
  const book = new Tampered(clean, fenceModel);
  book.cell("price", number(3500));
  const audit = await auditWorkbook(readWorkbook(book.bytes()), [fence], { book: fenceBook });
  expect(audit.headline[0]?.shown).toBe(3500);
  expect(audit.headline[0]?.byTemplate).toBeCloseTo(4087.01555, 9);
});
