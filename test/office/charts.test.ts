import { mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { auditWorkbook } from "../../engine/audit/audit.js";
import { readWorkbook } from "../../engine/workbook/read/read.js";
import { templates } from "../../sheets/templates/index.js";
import { staleCaches } from "../support/cached-points.js";
import { cachedIn, chartsIn, titleOf, within } from "../support/chart-parts.js";
import { bidOf, type DemoBid, demoFolder } from "../support/demo.js";
import { recalculateInGnumeric } from "./gnumeric.js";
import { editCells, insertRow, recalculate } from "./soffice.js";

// The charts are the programs' own: they follow the cells, and stay through a save.

let folder: string;
let made: string;
let bid: DemoBid;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "rillbook-charts-"));
  made = join(folder, "made.xlsx");
  bid = await bidOf(join(demoFolder, "hillside-stream.json"));
  await writeFile(made, bid.bytes);
}, 120_000);
afterAll(() => rm(folder, { recursive: true, force: true }));

const bytesOf = async (path: string) => new Uint8Array(await readFile(path));

/** Each chart as its title and number of series, in a fixed order. */
const inventory = (bytes: Uint8Array): string[] =>
  [...chartsIn(bytes).values()]
    .map((chart) => `${titleOf(chart).trim()}: ${within(chart, "ser").length}`)
    .sort();

/** The areas that the charts draw, each as often as it is drawn. */
const areas = (bytes: Uint8Array): string[] =>
  [...chartsIn(bytes).values()]
    .flatMap(cachedIn)
    .map(({ formula }) => formula.replace(/[$']/g, ""))
    .filter((formula) => !formula.startsWith('"'))
    .sort();

test.each([
  ["LibreOffice", recalculate],
  ["Gnumeric", recalculateInGnumeric],
] as const)(
  "%s keeps every chart, its series and their cells",
  { timeout: 200_000 },
  async (program, save) => {
    const [saved = ""] = await save([made], join(folder, program));
    const bytes = await bytesOf(saved);
    expect(inventory(bytes)).toEqual(inventory(bid.bytes));
    expect(areas(bytes)).toEqual(areas(bid.bytes));
  },
);

test("an input that changes moves what the charts draw", { timeout: 200_000 }, async () => {
  const out = join(folder, "edited.xlsx");
  const edits = [
    { name: "falls.drop[1]", value: 3 },
    { name: "basin_length", value: 11 },
    { name: "days_between_fills", value: 9 },
  ];
  await editCells(made, edits, out);
  const bytes = await bytesOf(out);
  expect(staleCaches(bytes, readWorkbook(bytes))).toEqual([]);
  const before = new Map(
    [...chartsIn(bid.bytes).values()].map((one) => [titleOf(one), points(one)]),
  );
  for (const chart of chartsIn(bytes).values()) {
    const title = titleOf(chart).trim();
    expect(points(chart), title).not.toEqual(before.get(title));
  }
});

const points = (chart: Parameters<typeof cachedIn>[0]): string[] =>
  cachedIn(chart)
    .filter(({ formula }) => !formula.startsWith('"'))
    .flatMap((one) => [...one.points.values()].map((value) => Number(value).toPrecision(9)));

test("a row put in above what they draw moves the charts along, and is no finding", {
  timeout: 200_000,
}, async () => {
  const out = join(folder, "row.xlsx");
  await insertRow(made, "Price", 3, out);
  const content = readWorkbook(await bytesOf(out), { look: true });
  const { findings } = await auditWorkbook(content, templates, bid.book);
  expect(findings.filter(({ code }) => code === "drawn")).toEqual([]);
  expect(staleCaches(await bytesOf(out), content)).toEqual([]);
});
