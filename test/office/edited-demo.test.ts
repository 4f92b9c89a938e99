import { mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { auditWorkbook } from "../../engine/audit/audit.js";
import { agree, heldBy } from "../../engine/audit/subject.js";
import { valuesOf } from "../../engine/book/values.js";
import { calculate } from "../../engine/evaluate/calculate.js";
import { takeWorkbook } from "../../engine/take/take.js";
import { matchWorkbook } from "../../engine/workbook/match/match.js";
import type { WorkbookContent } from "../../engine/workbook/read/content.js";
import { readWorkbook } from "../../engine/workbook/read/read.js";
import { templates } from "../../sheets/templates/index.js";
import { staleCaches } from "../support/cached-points.js";
import { cachedIn, chartsIn, titleOf } from "../support/chart-parts.js";
import { bidOf, type DemoBid, demoFolder } from "../support/demo.js";
import { takeSteps } from "./soffice.js";
import type { Step } from "./steps.js";

// What an office does in a written bid, in one start of LibreOffice: rows put in, inputs changed, a fall and options
// added. The figures move to what the same job gives; the charts, which are the program's own, follow their cells
// (that they stay through a save: stored-demos.ts); lines that come into use show, or their sheet says so.

const changed: readonly (readonly [name: string, value: number])[] = [
  ["energy_rate", 0.215],
  ["main_length", 56.5],
  ["falls.drop[1]", 3],
  ["basin_length", 11],
  ["days_between_fills", 9],
  // what was planned is drawn beside what was taken
  ["built_tasks.hours_taken[1]", 9],
];
const fall: readonly (readonly [name: string, value: number | string])[] = [
  ["falls.name[5]", "Added fall"],
  ["falls.level[5]", 3],
  ["falls.width[5]", 1.75],
  ["falls.drop[5]", 1.25],
  ["falls.look[5]", "normal sheet"],
  ["falls.lip_type[5]", "rounded stone"],
  ["falls.open_ends[5]", 1],
];
const option = (row: number): (readonly [string, number | string])[] => [
  [`options.description[${row}]`, `Invented option ${row}`],
  [`options.other_cost[${row}]`, 100 * row],
];
const typed = [...changed, ...fall];

let folder: string;
let bid: DemoBid;
let edited: Uint8Array;
/** With a row put in above what its charts draw; with what is typed; with one option as well; with five. */
const contents: Record<string, WorkbookContent> = {};
const bytes: Record<string, Uint8Array> = {};

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "rillbook-edited-"));
  const at = (name: string) => join(folder, `${name}.xlsx`);
  bid = await bidOf(join(demoFolder, "hillside-stream.json"));
  await writeFile(at("made"), bid.bytes);
  const set = ([name, value]: readonly [string, number | string]): Step => ({
    ...{ kind: "set", name, value },
  });
  const falls = bid.model.placed.find(
    ({ block }) => block.kind === "table" && block.name === "falls",
  );
  await takeSteps(
    at("made"),
    [
      { kind: "insert-row", sheet: "Price", row: 3 },
      { kind: "basic", statements: "document.calculateAll()" },
      { kind: "save", file: at("row") },
      { kind: "insert-row", sheet: falls?.sheet ?? "", row: falls?.top ?? 0 },
      ...typed.map(set),
      { kind: "save", file: at("edited") },
      ...option(1).map(set),
      { kind: "save", file: at("one") },
      ...[2, 3, 4, 5].flatMap(option).map(set),
    ],
    at("five"),
  );
  for (const name of ["row", "edited", "one", "five"]) {
    bytes[name] = new Uint8Array(await readFile(at(name)));
    contents[name] = readWorkbook(bytes[name], { look: true });
  }
  edited = bytes.edited as Uint8Array;
}, 300_000);
afterAll(() => rm(folder, { recursive: true, force: true }));

test("what is taken from it gives the same figures, in every cell", () => {
  const { model, job, book, values: before } = bid;
  const content = contents.edited as WorkbookContent;
  const into = { record: job, file: "hillside-stream.json" };
  const taker = { by: "A", time: "2026-03-04T05:06:07.089Z" };
  const taken = takeWorkbook(content, templates, "edited.xlsx", taker, into);
  expect(taken.findings).toEqual([]);
  expect(Object.fromEntries(taken.entries.map((one) => [one.input, one.new]))).toEqual(
    Object.fromEntries(typed),
  );
  const values = calculate(model, valuesOf(model, taken.job, book));
  const { at } = matchWorkbook(content, model);
  const differing = model.order.flatMap((cell) => {
    const shown = heldBy(cell, at.get(cell.id)?.cell.value ?? null);
    const ours = values[cell.index] ?? null;
    return agree(shown, ours) ? [] : [[cell.id, shown, ours]];
  });
  expect(differing).toEqual([]);
  for (const name of ["price", "man_hours", "total_dynamic_head"]) {
    const { index } = model.byId.get(name) ?? {};
    expect(values[index as number], name).not.toBe(before[index as number]);
  }
});

test("an input that changes moves what the charts draw", () => {
  expect(staleCaches(edited, contents.edited as WorkbookContent)).toEqual([]);
  const before = new Map(
    [...chartsIn(bid.bytes).values()].map((one) => [titleOf(one), points(one)]),
  );
  for (const chart of chartsIn(edited).values()) {
    const title = titleOf(chart).trim();
    expect(points(chart), title).not.toEqual(before.get(title));
  }
});

const points = (chart: Parameters<typeof cachedIn>[0]): string[] =>
  cachedIn(chart)
    .filter(({ formula }) => !formula.startsWith('"'))
    .flatMap((one) => [...one.points.values()].map((value) => Number(value).toPrecision(9)));

test("a row put in above what they draw moves the charts along, and is no finding", async () => {
  const content = contents.row as WorkbookContent;
  const { findings } = await auditWorkbook(content, templates, { book: bid.book });
  expect(findings.filter(({ code }) => code === "drawn")).toEqual([]);
  expect(staleCaches(bytes.row as Uint8Array, content)).toEqual([]);
});

test("lines that an edit brings show at once, or the sheet says that rows in use are hidden", () => {
  const [one, five] = ["one", "five"].map((name) => {
    const { sheets } = contents[name] as WorkbookContent;
    const cells = [...(sheets.find((sheet) => sheet.name === "Proposal")?.cells ?? [])];
    return cells.map(([, { value }]) => String(value)).join("\n");
  });
  expect(one).toContain("Invented option 1");
  expect(one).not.toMatch(/hidden/);
  expect(five).toContain("Invented option 5");
  expect(five).toMatch(/hidden/);
});
