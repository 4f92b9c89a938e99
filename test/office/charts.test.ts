import { mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { auditWorkbook } from "../../engine/audit/audit.js";
import { readWorkbook } from "../../engine/workbook/read/read.js";
import { templates } from "../../sheets/templates/index.js";
import { staleCaches } from "../support/cached-points.js";
import { cachedIn, chartsIn, titleOf } from "../support/chart-parts.js";
import { bidOf, type DemoBid, demoFolder } from "../support/demo.js";
import { takeSteps } from "./soffice.js";
import type { Step } from "./steps.js";

// The charts are the programs' own: they follow the cells. That they stay through a save: stored-demos.ts.

const edits: readonly [name: string, value: number][] = [
  ["falls.drop[1]", 3],
  ["basin_length", 11],
  ["days_between_fills", 9],
  // what was planned is drawn beside what was taken
  ["built_tasks.hours_taken[1]", 9],
];

let folder: string;
let bid: DemoBid;
/** The bid with a row put in above what it draws; with that and the edits. */
let withRow: Uint8Array;
let edited: Uint8Array;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "rillbook-charts-"));
  const at = (name: string) => join(folder, `${name}.xlsx`);
  const bytesOf = async (name: string) => new Uint8Array(await readFile(at(name)));
  bid = await bidOf(join(demoFolder, "hillside-stream.json"));
  await writeFile(at("made"), bid.bytes);
  const steps: Step[] = [
    { kind: "insert-row", sheet: "Price", row: 3 },
    { kind: "basic", statements: "document.calculateAll()" },
    { kind: "save", file: at("row") },
    ...edits.map(([name, value]): Step => ({ kind: "set", name, value })),
  ];
  await takeSteps(at("made"), steps, at("edited"));
  withRow = await bytesOf("row");
  edited = await bytesOf("edited");
}, 200_000);
afterAll(() => rm(folder, { recursive: true, force: true }));

test("an input that changes moves what the charts draw", () => {
  expect(staleCaches(edited, readWorkbook(edited))).toEqual([]);
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
  const content = readWorkbook(withRow, { look: true });
  const { findings } = await auditWorkbook(content, templates, bid.book);
  expect(findings.filter(({ code }) => code === "drawn")).toEqual([]);
  expect(staleCaches(withRow, content)).toEqual([]);
});
