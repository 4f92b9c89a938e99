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

interface Case {
  readonly what: string;
  readonly basic: string;
  readonly finds: Partial<Finding>;
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
    finds: { code: "number-format", where: "Price!B17" },
  },
  {
    what: "the margin in white",
    basic: at("margin", "cell.CharColor = RGB(255, 255, 255)"),
    finds: { code: "look", where: "Price!B19" },
  },
  {
    what: "the row of the price by the foot hidden",
    basic: at("price_per_foot", "page.Rows.getByIndex(cell.CellAddress.Row).IsVisible = False"),
    finds: { code: "hidden", where: "sheet Price" },
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
  },
];

let folder: string;
let bid: DemoBid;
let untouched: readonly Finding[];
let tampered: readonly Finding[];
let savedOn: readonly Finding[];

async function audited(path: string): Promise<readonly Finding[]> {
  const content = readWorkbook(new Uint8Array(await readFile(path)), { look: true });
  const { findings } = await auditWorkbook(content, templates, bid.book);
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
  await takeSteps(file, [...untampered, ...steps], changed);
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
test.each(cases.filter(({ finds }) => finds.where !== "sheet Crew"))(
  "$what is still found after a save by Gnumeric",
  ({ finds }) => {
    expect(savedOn).toContainEqual(expect.objectContaining(finds));
  },
);
