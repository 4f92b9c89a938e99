import { copyFile, mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { basename, join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import type { OfficeBook } from "../../../engine/book/office-book.js";
import {
  type Collected,
  collect,
  type Evidence,
  evidenceOf,
  isLearning,
} from "../../../engine/learn/index.js";
import { findFiles, tradeOf } from "../../../engine/rerun/index.js";
import { learning } from "../../../sheets/learning/learning.js";
import { templates } from "../../../sheets/templates/index.js";
import { builtOn, office, writeBecame } from "./built-demo.js";

const learnings = [learning(20), learning(8)].filter(isLearning);
const trade = tradeOf([...templates, ...learnings]);

let folder: string;
let book: OfficeBook;
let collected: Collected;

const write = (file: string, job: string, inputs: object) =>
  writeBecame(folder, { file, job, inputs: inputs as never });

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "rillbook-learn-"));
  book = await trade.readBook(office);
  const taken = {
    1: { quantity_done: 1, hours_taken: 4 },
    3: { quantity_done: 2, hours_taken: 5, machine_taken: 1 },
  };
  await write("late.json", "G-2", builtOn("2026-09-30", taken));
  const early = await write(
    "early.json",
    "G-1",
    builtOn("2026-05-30", { ...taken, 2: { hours_taken: 3 } }),
  );
  await copyFile(early, join(folder, "early-copy.json"));
  await write("bid.json", "G-3", {});
  await write("lost.json", "G-4", { job_state: "lost" });
  await write("undated.json", "G-5", { ...builtOn("2026-05-30", taken), work_ended: null });
  await write(
    "no-hours.json",
    "G-6",
    builtOn("2026-05-30", { 1: { quantity_done: 3 }, 2: { hours_taken: 0, quantity_done: 1 } }),
  );
  await write(
    "unlike.json",
    "G-7",
    builtOn("2026-05-30", { 1: { quantity_done: 1, hours_taken: 4 } }),
  );
  await write(
    "unlike-too.json",
    "G-7",
    builtOn("2026-05-30", { 1: { quantity_done: 1, hours_taken: 5 } }),
  );
  await copyFile(office, join(folder, "office.json"));
  await writeFile(join(folder, "broken.json"), "{");
  const files = await findFiles([folder], []);
  collected = await collect(files, trade, book, "work_method");
});
afterAll(() => rm(folder, { recursive: true, force: true }));

test("built jobs are taken, in the order in which they ended", () => {
  expect(collected.jobs.map(({ job, ended }) => [job, ended])).toEqual([
    ["G-1", "2026-05-30"],
    ["G-2", "2026-09-30"],
  ]);
});

test("a job tells quantity, hours, rate and factor of each task that has both", () => {
  const [first] = collected.jobs;
  expect(first?.tasks.map(({ quantity, hours }) => [quantity, hours])).toEqual([
    [1, 4],
    [2, 5],
  ]);
  expect(first?.half).toBe(1);
  expect(first?.tasks.every(({ planned, factor }) => planned > 0 && factor > 0)).toBe(true);
  expect(["machine", "small machine", "by hand"]).toContain(first?.condition);
});

test.each([
  ["bid.json", 'its state is "bid"'],
  ["lost.json", 'its state is "lost"'],
  ["undated.json", "its last day of work (work_ended) is not given"],
  ["no-hours.json", "no task has both"],
  ["unlike.json", "it says other hours of job G-7 than"],
  ["unlike-too.json", "it says other hours of job G-7 than"],
  ["office.json", "it is an office book"],
  ["broken.json", "is not valid JSON"],
  ["early.json", "it is job G-1 once more"],
])("%s is left out, and told why", (file, because) => {
  const told = collected.passedOver.filter((one) => basename(one.file) === file);
  expect(told.map((one) => one.because).join()).toContain(because);
});

test("no file of the jobs is changed", async () => {
  expect(await readFile(join(folder, "broken.json"), "utf8")).toBe("{");
});

test("bids won and lost are told, each once, with price and cost", () => {
  const jobs = collected.decided.map(({ job, won }) => [job, won]);
  // two files of G-7 say other hours, but one outcome and price
  expect(jobs).toEqual([
    ["G-1", true],
    ["G-2", true],
    ["G-4", false],
    ["G-5", true],
    ["G-6", true],
    ["G-7", true],
  ]);
  expect(collected.unlike).toEqual([]);
  expect(collected.decided.every(({ price, cost }) => price > cost && cost > 0)).toBe(true);
});

describe("into a workbook", () => {
  const made = (of = collected): Evidence =>
    evidenceOf(of.jobs, of.decided, book, learnings, "2027-03-01");
  const rowsOf = ({ record }: Evidence, table: string) =>
    record.inputs[table] as readonly Record<string, unknown>[];

  test("the smallest that holds all", () => {
    const evidence = made();
    expect(evidence.model.template.name).toBe("learned-rates-8");
    expect(evidence.tooMany).toEqual([]);
    expect(rowsOf(evidence, "evidence").map((row) => [row.job, row.quantity, row.hours])).toEqual([
      ["G-1", 1, 4],
      ["G-1", 2, 5],
      ["G-2", 1, 4],
      ["G-2", 2, 5],
    ]);
  });

  test("with each production rate of the book that a task of the template has, as the book says it", () => {
    const rows = rowsOf(made(), "book_rates");
    expect(rows.length).toBeGreaterThan(20);
    const dig = book.tables.rates?.find(({ code }) => code === "dig");
    expect(rows.find(({ code }) => code === "dig")).toEqual({
      ...{ code: "dig", means: dig?.description, unit: dig?.unit, book_rate: dig?.value },
    });
    expect(rows.some(({ code }) => String(code).startsWith("wage"))).toBe(false);
  });

  test("without the oldest jobs, where there is no room for all", () => {
    const [first, ...others] = collected.jobs;
    const many = [1, 2, 3, 4, 5, 6].map((i) => ({
      ...first,
      job: `M-${i}`,
      ended: `2020-01-0${i}`,
    }));
    const evidence = made({ ...collected, jobs: [...many, ...others] as Collected["jobs"] });
    expect(evidence.tooMany.map(({ job }) => job)).toEqual(["M-1", "M-2", "M-3"]);
    expect(evidence.jobs.map(({ job }) => job)).toEqual(["M-4", "M-5", "M-6", "G-2"]);
  });

  test("tasks whose rate the book does not have are told", () => {
    const [first] = collected.jobs;
    const other = {
      ...first,
      tasks: [{ ...first?.tasks[0], code: "no-such" }, ...(first?.tasks ?? [])],
    };
    const evidence = made({ ...collected, jobs: [other] as Collected["jobs"] });
    expect(evidence.unknown).toEqual(["no-such"]);
    expect(evidence.rows).toBe(2);
  });

  test("with nothing built there is none", () => {
    expect(() => made({ ...collected, jobs: [] })).toThrow("nothing to learn from");
  });
});
