import { mkdtemp, readFile, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import type { JobRecord } from "../../engine/job/record.js";
import type { WorkbookContent } from "../../engine/workbook/read/content.js";
import { cellAt } from "../../engine/workbook/read/lookup.js";
import { readWorkbookFile } from "../../engine/workbook/read/read-file.js";
import { templates } from "../../sheets/templates/index.js";
import { spoken } from "../support/spoken.js";
import { takeSteps } from "./soffice.js";
import type { Step } from "./steps.js";

// The walk of a yard typed into a new workbook, cell by cell as a person would, from nothing to a bid. The yard
// is invented. LibreOffice is opened once; what it shows is stored after some pages, nothing calculated by us.

/** What is typed, page by page: name of the cell, keys, and the value that a record holds for it. */
const pages: readonly [page: string, typed: readonly [string, string, (number | string)?][]][] = [
  [
    "Job",
    [
      ["customer", "Invented customer"],
      ["site", "9 Sample Row (invented)"],
      ["walked_by", "Invented walker"],
      ["walked_on", "10/30/2026", "2026-10-30"],
      ["look_wanted", "Loud enough to cover the road"],
    ],
  ],
  [
    "Falls",
    [
      ["falls.name[1]", "Upper fall"],
      ["falls.width[1]", "2", 2],
      ["falls.width_plus[1]", "6", 6],
      ["falls.drop[1]", "1.5", 1.5],
      ["falls.look[1]", "normal sheet"],
      ["falls.name[2]", "Lower fall"],
      ["falls.level[2]", "2", 2],
      ["falls.width[2]", "3", 3],
      ["falls.drop[2]", "1", 1],
      ["falls.drop_plus[2]", "3", 3],
      ["falls.look[2]", "normal sheet"],
    ],
  ],
  [
    "Stream runs",
    [
      ["runs.name[1]", "Upper run"],
      ["runs.length[1]", "8", 8],
      ["runs.width[1]", "2.5", 2.5],
      ["runs.fall[1]", ".25", 0.25],
      ["runs.name[2]", "Lower run"],
      ["runs.after_level[2]", "2", 2],
      ["runs.length[2]", "5", 5],
      ["runs.length_plus[2]", "4", 4],
      ["runs.width[2]", "3", 3],
      ["runs.fall[2]", "0.2", 0.2],
    ],
  ],
  [
    "Lines",
    [
      ["pipe_lines.name[1]", "Behind the upper fall"],
      ["pipe_lines.length[1]", "6", 6],
    ],
  ],
  ["Main pipe", [["main_length", "32", 32]]],
  [
    "Way in, ground, power",
    [
      ["gate_width", "8", 8],
      ["access_slope", "4%", 0.04],
      ["soil_kind", "common earth"],
      ["panel_distance", "45", 45],
      ["wind_exposure", "sheltered"],
      ["stone_drop", "Left of the drive, on boards"],
    ],
  ],
  [
    "Decisions: job",
    [
      ["job_title", "Waterfall beside the invented terrace"],
      ["estimator", "Invented estimator"],
      ["bid_date", "11/2/2026", "2026-11-02"],
      ["start_month", "5", 5],
      ["hours_a_day", "10", 10],
    ],
  ],
  [
    "Decisions: water",
    [
      ["runs.bed[2]", "gravel"],
      ["pipe_lines.elbows_90[1]", "1", 1],
      ["main_elbows_90", "2", 2],
      ["pipe_lines.pipe_size[1]", "3 in"],
      ["pipe_lines.siphon_stop[1]", "air break"],
      ["main_size", "3 in"],
      ["pump_choice", "pump-medium"],
    ],
  ],
  ["A third run begun", [["runs.name[3]", "Last run"]]],
  [
    "A third run completed",
    [
      ["runs.after_level[3]", "2", 2],
      ["runs.length[3]", "3", 3],
      ["runs.width[3]", "3", 3],
      ["runs.fall[3]", "0.1", 0.1],
    ],
  ],
  [
    "Decisions: basin, money",
    [
      ["electrical_work", "by us"],
      ["basin_length", "10", 10],
      ["basin_width", "8", 8],
      ["margin_wanted", "22%", 0.22],
    ],
  ],
];
const typed = pages.flatMap(([, cells]) => cells);

const last = pages.length - 1;
const placeOf = (name: string) => pages.findIndex(([page]) => page === name);
/** After which pages it is stored: before the first, in the middle of the walk, and around each row that is begun. */
const stored: readonly number[] = [
  -1,
  ...["Falls", "Lines", "Decisions: job", "Decisions: water"].map(placeOf),
  ...["A third run begun", "A third run completed"].map(placeOf),
  last,
];

let folder: string;
let yard: string;
/** The workbook as it stood after a page; the last one is the yard's. */
const after = (page: number) => (page === last ? yard : join(folder, `after-${page}.xlsx`));
const read = new Map<number, Promise<WorkbookContent>>();
/** What stood there, read once for all tests. */
function contentAfter(page: number): Promise<WorkbookContent> {
  const content = read.get(page) ?? readWorkbookFile(after(page));
  read.set(page, content);
  return content;
}

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "rillbook-walk-"));
  yard = join(folder, "yard.xlsx");
  const empty = join(folder, "empty.xlsx");
  expect((await rillbook("start", empty)).status).toBe(0);
  const steps = pages.flatMap(([, cells], page): Step[] => [
    ...(stored.includes(page - 1) ? [{ kind: "save", file: after(page - 1) } as const] : []),
    ...cells.map(([name, keys]): Step => ({ kind: "type", name, keys })),
  ]);
  await takeSteps(empty, steps, yard, "en-US", 280);
}, 300_000);
afterAll(() => rm(folder, { recursive: true, force: true }));

const rillbook = (...args: string[]) => spoken(args, templates);

const errorsIn = ({ sheets }: WorkbookContent): string[] =>
  sheets.flatMap(({ name, cells }) =>
    [...cells].flatMap(([address, { value }]) =>
      typeof value === "object" && value !== null
        ? [`${name}!${address} ${JSON.stringify(value)}`]
        : [],
    ),
  );

/** The lines of Summary that lead to what is still missing. */
const missingOn = ({ sheets }: WorkbookContent): string[] =>
  [...(sheets.find(({ name }) => name === "Summary")?.cells.values() ?? [])].flatMap(
    ({ formula, value }) =>
      /^IF\((AND\()?ISBLANK\(/.test(formula ?? "") && value !== "" && value !== null
        ? [String(value)]
        : [],
  );

/** What Summary says in a line that begins so. */
const saidOn = ({ sheets }: WorkbookContent, begin: string): string | undefined =>
  [...(sheets.find(({ name }) => name === "Summary")?.cells.values() ?? [])]
    .map(({ value }) => String(value))
    .find((value) => value.startsWith(begin));

interface Page {
  readonly page: string;
  readonly typed: number;
  readonly price: number;
  readonly missing: number;
  readonly shown: unknown;
  readonly verdict: string;
}

/** The price as Summary shows it. */
const priceOn = ({ sheets }: WorkbookContent) =>
  [...(sheets.find(({ name }) => name === "Summary")?.cells.values() ?? [])].find(({ formula }) =>
    formula?.endsWith(',price,"–")'),
  )?.value;

const priceIn = (content: WorkbookContent) => cellAt(content, "price").cell.value as number;

test("no error value at any point, and what is missing grows less page by page", async () => {
  const table: Page[] = [];
  const errors: string[] = [];
  for (const page of stored) {
    const content = await contentAfter(page);
    const [name, cells] = pages[page] ?? ["(nothing typed)", []];
    errors.push(...errorsIn(content).map((one) => `${name}: ${one}`));
    const price = Math.round(priceIn(content) * 100) / 100;
    const verdict = saidOn(content, "NOT READY") ?? "";
    const [missing, shown] = [missingOn(content).length, priceOn(content)];
    table.push({ page: name, typed: cells.length, price, missing, shown, verdict });
  }
  if (process.env.SHOW_TABLE) console.table(table);
  expect(errors).toEqual([]);
  expect(table.map(({ missing }) => missing)).toEqual([8, 5, 4, 1, 0, 0, 0, 0]);
  // a price shows once no first field is missing; until then Summary leads to the next one
  for (const { missing, shown, price, verdict } of table) {
    if (missing > 0) expect([shown, verdict]).toEqual(["–", expect.stringMatching(/: next is /)]);
    else expect(shown).toBeCloseTo(price, 6);
  }
  // no sheet has one before; each page typed after it moves it, but for what costs nothing
  const prices = table.map(({ price }) => price);
  expect(prices.every(Number.isFinite)).toBe(true);
  for (const { missing, price } of table) {
    if (missing > 0) expect(price).toBe(0);
    else expect(price).toBeGreaterThan(1000);
  }
  expect(new Set(prices).size).toBeGreaterThan(3);
});

test("a row that is begun is told on Summary, with the cell that it needs next", async () => {
  const [begun, completed] = ["A third run begun", "A third run completed"].map(placeOf) as [
    ...[number, number],
  ];
  const told = async (page: number) => saidOn(await contentAfter(page), "Walk: Stream runs");
  expect(await told(begun - 1)).toBeUndefined();
  expect(await told(begun)).toBe("Walk: Stream runs: After level needed");
  expect(await told(completed)).toBeUndefined();
});

test("taken into a record: what was typed, by whom, and nothing else", async () => {
  const record = join(folder, "yard.json");
  const { status, err } = await rillbook("take", yard, "-o", record);
  expect(err).toBe("");
  expect(status).toBe(0);
  const { trail = [] } = JSON.parse(await readFile(record, "utf8")) as JobRecord;
  const stoodThere = ["falls.look[1]", "main_size", "soil_kind"];
  expect(Object.fromEntries(trail.map((one) => [one.input, one.new]))).toEqual(
    Object.fromEntries(
      typed
        .filter(([name]) => !stoodThere.includes(name))
        .map(([name, keys, value]) => [name, value ?? keys]),
    ),
  );
  expect(new Set(trail.map(({ by }) => by))).toEqual(
    new Set(["Invented walker", "Invented estimator"]),
  );
});

test("an audit, a bid in its place at the same price, and an audit again: only checks that fail", async () => {
  const findings = async () => {
    const { out } = await rillbook("audit", yard, "--json");
    const { findings: all } = JSON.parse(out) as { findings: Record<string, string>[] };
    return all.filter(({ grade }) => grade !== "to know");
  };
  const shown = priceIn(await contentAfter(last));
  // what was typed is told as not in the trail yet, and nothing else is found
  const untold = (await findings()).filter(({ code }) => code !== "check-failed");
  expect(new Set(untold.map(({ code }) => code))).toEqual(new Set(["input-untold"]));
  const { out } = await rillbook("bid", yard, "--json");
  const bid = JSON.parse(out);
  expect(bid).toMatchObject({ missing: [], errors: [] });
  expect(bid.headline.price.value).toBeCloseTo(shown, 6);
  expect(priceIn(await readWorkbookFile(yard))).toBe(bid.headline.price.value);
  expect((await findings()).map(({ code, name }) => `${code} ${name}`)).toEqual([
    "check-failed prices_own",
  ]);
});
