import { mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { auditWorkbook } from "../../engine/audit/audit.js";
import type { Finding } from "../../engine/audit/finding.js";
import { stands } from "../../engine/audit/index.js";
import { readWorkbook } from "../../engine/workbook/read/read.js";
import { templates } from "../../sheets/templates/index.js";
import { bidOf, type DemoBid, demoFolder } from "../support/demo.js";
import { Tampered } from "../support/tamper.js";
import { recalculateInGnumeric } from "./gnumeric.js";
import { takeSteps } from "./soffice.js";

// An option that the office types into a bid brings a hidden row into use. Nothing is wrong by that: the row is named,
// and what is told to do about it does it.

let folder: string;
let bid: DemoBid;
const paths = new Map<string, string>();

const option = [
  { kind: "set", name: "options.description[1]", value: "Second pump in reserve" },
  { kind: "set", name: "options.other_cost[1]", value: 900 },
] as const;

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "rillbook-honest-"));
  for (const name of ["bid", "typed", "shown", "unknown"])
    paths.set(name, join(folder, `${name}.xlsx`));
  const at = (name: string) => paths.get(name) as string;
  bid = await bidOf(join(demoFolder, "garden-corner.json"));
  await writeFile(at("bid"), bid.bytes);
  // all rows of a sheet at once: one by one takes longer than all else here
  const show = `For Each page In document.Sheets
    page.getCellRangeByPosition(0, 0, 0, 400).Rows.IsVisible = True
  Next`;
  const steps = [
    ...option,
    { kind: "save", file: at("typed") },
    { kind: "basic", statements: show },
  ] as const;
  await takeSteps(at("bid"), steps, at("shown"), "", 200);
  // a library types it in, and drops every stored result
  const book = new Tampered(bid.bytes, bid.model);
  book.cell("options.description[1]", () => "<is><t>Second pump in reserve</t></is>", "inlineStr");
  book.cell("options.other_cost[1]", () => "<v>900</v>", "n");
  for (const part of book.partNames().filter((one) => one.startsWith("xl/worksheets/sheet"))) {
    book.put(part, book.text(part).replace(/(<\/f>)<v>[^<]*<\/v>/g, "$1<v></v>"));
  }
  await writeFile(at("unknown"), book.bytes());
  const [gnumeric] = await recalculateInGnumeric([at("unknown")], join(folder, "gnumeric"));
  paths.set("gnumeric", gnumeric as string);
}, 400_000);
afterAll(() => rm(folder, { recursive: true, force: true }));

/** What is made of each workbook, once for all tests that ask. */
const onceFor = <T>(make: (name: string) => Promise<T>): ((name: string) => Promise<T>) => {
  const made = new Map<string, Promise<T>>();
  return (name) => {
    const one = made.get(name) ?? make(name);
    made.set(name, one);
    return one;
  };
};

const contentOf = onceFor(async (name) =>
  readWorkbook(new Uint8Array(await readFile(paths.get(name) as string)), { look: true }),
);

const told = onceFor(
  async (name): Promise<readonly Finding[]> =>
    (await auditWorkbook(await contentOf(name), templates, { book: bid.book })).findings,
);

const grave = async (name: string): Promise<Finding[]> =>
  (await told(name)).filter(({ grade }) => grade !== "to know");

const untold = expect.objectContaining({ code: "input-untold" });

// the program keeps the rows hidden that the edit brought into use: the office did nothing but type
test.each(["typed", "gnumeric"])("%s: nothing is wrong, and the rows are named", async (name) => {
  expect(await grave(name)).toEqual([untold, untold]);
  expect(await told(name)).toContainEqual(
    expect.objectContaining({
      grade: "to know",
      code: "hidden",
      where: "sheet Price",
      found: expect.stringContaining('"Second pump in reserve'),
    }),
  );
});

test("once all rows are shown, the changed inputs alone are left", async () => {
  expect(await grave("shown")).toEqual([untold, untold]);
});

test("results that a library dropped are one finding, and the rows are named as by their formulas", async () => {
  const found = await grave("unknown");
  expect(found.filter(({ grade }) => grade === "wrong")).toEqual([
    expect.objectContaining({
      code: "value-stale",
      found: expect.stringContaining("shows nothing"),
    }),
  ]);
});

test.each(["typed", "gnumeric", "shown", "unknown"])("%s: the bid stands", async (name) => {
  expect(stands(await contentOf(name), templates)).toBe(true);
});
