import { mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { auditWorkbook } from "../../engine/audit/audit.js";
import type { Finding } from "../../engine/audit/finding.js";
import { readWorkbook } from "../../engine/workbook/read/read.js";
import { templates } from "../../sheets/templates/index.js";
import { bidOf, type DemoBid, demoFolder } from "../support/demo.js";
import { recalculateInGnumeric } from "./gnumeric.js";
import { takeSteps } from "./soffice.js";
import type { Step } from "./steps.js";

// What a person may do by hand in LibreOffice, and save: each is found, and nothing where nothing was
// done. All of it is done in one start of the program, each at a place of its own.

/** A statement about the sheet and the cell of a name. */
const at = (name: string, statements: string): string =>
  `cell = CellOf(document, "${name}", 0)
  page = PageOf(document, cell.Spreadsheet.Name)
  ${statements}`;

/** A statement about the cell of a sheet that begins with some words. */
const said = (sheet: string, words: string, statements: string): string =>
  `page = PageOf(document, "${sheet}")
  finder = page.createSearchDescriptor()
  finder.SearchString = "${words}"
  finder.SearchType = 1
  cell = page.findFirst(finder)
  If IsNull(cell) Then Refuse("nothing on ${sheet} says ${words}")
  ${statements}`;

/** Statements about how the pages of a sheet are set. */
const pages = (sheet: string, statements: string): string =>
  `page = PageOf(document, "${sheet}")
  pages = document.StyleFamilies.getByName("PageStyles").getByName(page.PageStyle)
  ${statements}`;

/** A box of so many 1/100 mm over the cell. */
const drawn = (kind: string, width: number, height: number): string =>
  `shape = document.createInstance("com.sun.star.drawing.${kind}")
  page.DrawPage.add(shape)
  size = shape.getSize()
  size.Width = ${width}
  size.Height = ${height}
  shape.setSize(size)
  shape.setPosition(cell.Position)`;

const has = (words: string) => expect.stringContaining(words);

interface Case {
  readonly what: string;
  readonly basic: string;
  readonly finds: Partial<Finding>;
  /** Gnumeric stores nothing of it: what it saves is as it was. */
  readonly washed?: true;
}

const cases: readonly Case[] = [
  {
    what: "a number format that shows thousands for dollars",
    basic: at(
      "price",
      `Dim us As New com.sun.star.lang.Locale
  us.Language = "en"
  us.Country = "US"
  cell.NumberFormat = document.NumberFormats.addNew("$#,##0.00,", us)`,
    ),
    finds: { grade: "wrong", code: "number-format", where: "Price!B17", found: has(" shows $") },
  },
  {
    what: "the margin in white",
    basic: at("margin", "cell.CharColor = RGB(255, 255, 255)"),
    finds: { code: "look", where: "Price!B19" },
  },
  {
    what: "the row of the price by the foot hidden",
    basic: at("price_per_foot", "page.Rows.getByIndex(cell.CellAddress.Row).IsVisible = False"),
    finds: {
      code: "hidden",
      where: "sheet Price",
      found: expect.stringMatching(/^row \d+ "Price per foot .*" is hidden$/),
    },
  },
  {
    what: "the price typed over its formula",
    basic: at("price", "cell.setValue(9900)"),
    finds: { grade: "wrong", code: "formula-overwritten", name: "price" },
  },
  {
    what: "a factor put into the formula of labor",
    basic: at("labor_cost", 'cell.setFormula(cell.getFormula() & "*0.9")'),
    finds: { grade: "wrong", code: "formula-edited", name: "labor_cost" },
  },
  {
    what: "a defined name pointed elsewhere",
    basic: 'document.NamedRanges.getByName("price_exact").setContent("$Price.$B$17")',
    finds: { grade: "wrong", code: "name-moved", name: "price_exact" },
  },
  {
    what: "a sheet of cautions hidden",
    basic: 'document.Sheets.getByName("Crew").IsVisible = False',
    finds: { code: "hidden", where: "sheet Crew" },
    washed: true,
  },
  {
    what: "an input typed over, its trail untouched",
    basic: 'SetNumber(CellOf(document, "margin_wanted", 0), 0.35, "margin_wanted")',
    finds: { code: "input-untold", name: "margin_wanted" },
  },
  {
    what: "the price on the customer's page typed over",
    basic: at("proposal_price", 'cell.setString("$14,200")'),
    finds: { grade: "wrong", code: "formula-overwritten", name: "proposal_price" },
  },
  {
    what: "a discount typed below it",
    basic: at(
      "proposal_price",
      'page.getCellByPosition(0, cell.CellAddress.Row + 1).setString("Discount for you: $1,000")',
    ),
    finds: { code: "text-changed", found: has("Discount for you") },
  },
  {
    what: "a text box over it",
    basic: `${at("proposal_price", drawn("TextShape", 4000, 900))}
  shape.setString("$14,000")`,
    finds: { code: "drawn", where: "sheet Proposal", found: has("$14,000") },
    washed: true,
  },
  {
    what: "a box over the list of materials",
    basic: `page = PageOf(document, "Materials")
  cell = page.getCellRangeByName("B8")
  ${drawn("RectangleShape", 9000, 3000)}`,
    finds: { code: "drawn", where: "sheet Materials" },
    washed: true,
  },
  {
    what: "values pasted over five formulas",
    basic: at(
      "man_hours",
      `first = CellOf(document, "tasks.hours", 1).CellAddress
  tasks = document.Sheets.getByIndex(first.Sheet)
  If tasks.isProtected() Then tasks.unprotect("")
  area = tasks.getCellRangeByPosition(first.Column, first.Row, first.Column, first.Row + 4)
  area.setDataArray(area.getDataArray())`,
    ),
    finds: { grade: "wrong", code: "formula-overwritten", where: has("tasks.hours[1], tasks") },
  },
  {
    what: "the count of failed checks cleared",
    basic: at("checks_failed", "cell.clearContents(1 + 2 + 4 + 16)"),
    finds: { grade: "wrong", code: "formula-missing", name: "checks_failed" },
  },
  {
    what: "the rows of a table sorted by cost",
    basic: `first = CellOf(document, "equipment.cost", 1).CellAddress
  page = PageOf(document, document.Sheets.getByIndex(first.Sheet).Name)
  area = page.getCellRangeByPosition(0, first.Row, first.Column, first.Row + 15)
  Dim sorted(0) As New com.sun.star.table.TableSortField
  sorted(0).Field = first.Column
  sorted(0).IsAscending = False
  area.sort(Array(Prop("SortFields", sorted())))`,
    finds: { grade: "wrong", code: "published-changed", name: "equipment.what[1]" },
  },
  {
    what: "a price of the office book on a hidden sheet",
    basic: `cell = CellOf(document, "items.cost", 1)
  page = PageOf(document, cell.Spreadsheet.Name)
  SetNumber(cell, 0.12, "items.cost")`,
    finds: { grade: "wrong", code: "price-changed", name: "items.cost[1]" },
  },
  {
    what: "a caution reworded",
    basic: said("Crew", "STOP: not settled", 'cell.setString("Go on.")'),
    finds: { code: "text-changed", where: has("Crew!") },
  },
  {
    what: "a rule that hides a figure",
    basic: `styles = document.StyleFamilies.getByName("CellStyles")
  pale = ""
  For i = 0 To styles.Count - 1
    If styles.getByIndex(i).CharColor = RGB(255, 255, 255) Then pale = styles.getByIndex(i).Name
  Next
  If pale = "" Then Refuse("no style in white")
  ${at(
    "liner_area_bought",
    `rules = cell.ConditionalFormat
  kind = com.sun.star.sheet.ConditionOperator.FORMULA
  rules.addNew(Array(Prop("Operator", kind), Prop("Formula1", "1=1"), Prop("StyleName", pale)))
  cell.ConditionalFormat = rules`,
  )}`,
    finds: { code: "look", where: has("Liner!"), found: has("a rule that hides the text") },
  },
  {
    what: "a print area that leaves out the cautions",
    basic: `page = PageOf(document, "Crew")
  page.setPrintAreas(Array(page.getCellRangeByName("A40:L209").RangeAddress))`,
    finds: { code: "look", where: "sheet Crew", found: has("left out") },
  },
  {
    what: "words at the head of a page",
    basic: pages(
      "Orders",
      `pages.HeaderIsOn = True
  head = pages.RightPageHeaderContent
  head.CenterText.setString("Paid in full")
  pages.RightPageHeaderContent = head`,
    ),
    finds: { code: "look", where: "sheet Orders, head of the page" },
  },
  {
    what: "pages printed at 15 %",
    basic: pages("Falls", "pages.PageScale = 15"),
    finds: { code: "look", where: "sheet Falls", found: has("printed at 15 %") },
  },
  {
    what: "other rows printed again on each page",
    basic: `page = PageOf(document, "Wording")
  rows = page.getTitleRows()
  rows.StartRow = rows.StartRow + 2
  rows.EndRow = rows.EndRow + 2
  page.setTitleRows(rows)`,
    finds: { code: "look", where: "sheet Wording", found: has("printed again on each page") },
  },
  {
    what: "a margin that leaves little of the page",
    basic: pages("Stream", "pages.LeftMargin = 12000"),
    finds: { code: "look", where: "sheet Stream", found: has("a margin of") },
  },
  {
    what: "a row squeezed",
    basic: said("Hand-over", "Shown and explained", "cell.Rows.getByIndex(0).Height = 60"),
    finds: { code: "look", where: has("Hand-over!"), found: has("points high") },
  },
  {
    what: "a column squeezed",
    basic: at("basin_water_held", "cell.Columns.getByIndex(0).Width = 200"),
    finds: { code: "look", where: "Basin!B:B" },
  },
  {
    what: "a column hidden",
    basic: `page = PageOf(document, "Earthwork")
  page.Columns.getByIndex(3).IsVisible = False`,
    finds: { code: "hidden", where: "sheet Earthwork", found: has('column D "') },
  },
  {
    what: "rows grouped and folded",
    basic: `page = PageOf(document, "Liner")
  area = page.getCellRangeByName("A12:A16").RangeAddress
  page.group(area, com.sun.star.table.TableOrientation.ROWS)
  page.hideDetail(area)`,
    finds: { code: "hidden", where: "sheet Liner" },
  },
  {
    what: "a figure in black on black",
    basic: at(
      "pump_cost",
      `cell.CellBackColor = RGB(0, 0, 0)
  cell.CharColor = RGB(0, 0, 0)`,
    ),
    finds: { code: "look", where: has("Price!"), found: has("000000 on 000000") },
  },
  {
    what: "a caution in one point",
    basic: said("Hand-over", "Anything electrical", "cell.CharHeight = 1"),
    finds: { code: "look", where: has("Hand-over!"), found: has("text of 1 points") },
  },
  {
    what: "a figure turned on its side",
    basic: at("stone_tons", "cell.RotateAngle = 9000"),
    finds: { code: "look", where: has("Stone!"), found: has("turned") },
  },
  {
    what: "a figure in a typeface of signs",
    basic: at("berm_volume", 'cell.CharFontName = "OpenSymbol"'),
    finds: { code: "look", where: has("Earthwork!"), found: has("signs") },
  },
  {
    what: "a formula of a whole area over a cell",
    basic: at("rain_area", 'cell.setArrayFormula("=1+1")'),
    finds: { grade: "wrong", code: "formula-edited", name: "rain_area" },
  },
  {
    what: "a defined name deleted",
    basic: 'document.NamedRanges.removeByName("profit")',
    finds: { grade: "wrong", code: "name-missing", name: "profit" },
  },
  {
    what: "a chart taken out",
    basic: `page = PageOf(document, "Summary")
  page.Charts.removeByName(page.Charts.ElementNames(0))`,
    finds: { code: "drawn", where: "sheet Summary", found: "1 charts are gone" },
  },
  {
    what: "a sum of its own from the web",
    basic: `page = PageOf(document, "Electric")
  page.getCellRangeByName("P3").setFormula("=WEBSERVICE(""http://example.invalid/x"")")`,
    finds: { code: "outside", where: "Electric!P3" },
  },
  {
    what: "a price that reads as a day",
    basic: at(
      "price_per_foot",
      `Dim there As New com.sun.star.lang.Locale
  there.Language = "en"
  there.Country = "US"
  cell.NumberFormat = document.NumberFormats.addNew("D MMM YYYY", there)`,
    ),
    finds: { grade: "wrong", code: "number-format", found: has(" where the cell holds $") },
  },
  {
    what: "a sheet of its own",
    basic: `document.Sheets.insertNewByName("Side", 5)
  document.Sheets.getByName("Side").getCellRangeByName("A1").setFormula("=$Price.B17*0.9")`,
    finds: { code: "sheet-extra", where: "sheet Side" },
  },
];

let folder: string;
let bid: DemoBid;
let untouched: readonly Finding[];
let tampered: readonly Finding[];
let savedOn: readonly Finding[];

async function audited(path: string): Promise<readonly Finding[]> {
  const content = readWorkbook(new Uint8Array(await readFile(path)), { look: true });
  const { findings } = await auditWorkbook(content, templates, { book: bid.book });
  return findings.filter(({ grade }) => grade !== "to know");
}

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "rillbook-tampered-"));
  const [file, same, changed] = ["bid", "same", "changed"].map((name) =>
    join(folder, `${name}.xlsx`),
  ) as [string, string, string];
  bid = await bidOf(join(demoFolder, "garden-corner.json"));
  await writeFile(file, bid.bytes);
  const untampered: Step[] = [
    { kind: "basic", statements: "document.calculateAll()" },
    { kind: "save", file: same },
  ];
  const steps = cases.map(({ basic }): Step => ({ kind: "basic", statements: basic }));
  await takeSteps(file, [...untampered, ...steps], changed, "", 250);
  untouched = await audited(same);
  tampered = await audited(changed);
  const [gnumeric] = await recalculateInGnumeric([changed], join(folder, "gnumeric"));
  savedOn = await audited(gnumeric as string);
}, 400_000);
afterAll(() => rm(folder, { recursive: true, force: true }));

test("the same way without a tampering is clean", () => {
  expect(untouched).toEqual([]);
});

test.each(cases)("$what is found", ({ finds }) => {
  expect(tampered).toContainEqual(expect.objectContaining(finds));
});

// Gnumeric has no hands here: it saves what was tampered with before, and washes no cell clean.
test.each(cases.filter(({ washed }) => !washed))(
  "$what is still found after a save by Gnumeric",
  ({ finds }) => {
    expect(savedOn).toContainEqual(expect.objectContaining(finds));
  },
);
