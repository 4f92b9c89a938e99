import { execFile } from "node:child_process";
import { writeFile } from "node:fs/promises";
import { join } from "node:path";
import { promisify } from "node:util";
import { expect, test } from "vitest";
import { rerun } from "../../../engine/rerun/rerun.js";
import { fenceBook } from "../../support/fence.js";
import { spoken } from "../../support/spoken.js";
import { rows, workbook } from "../workbook/read/build.js";
import {
  fenceFour,
  fenceThree,
  fenceTrade,
  folder,
  nextBook,
  options,
  writeJob,
} from "./old-fence.js";

// many old jobs at once: what is missing is said as that, what is no job is left out, nothing hangs

const templates = [fenceThree, fenceFour];
const next = { ...nextBook, mark: undefined };

const command = (...args: string[]) => spoken(args, templates);

async function office(
  oldItems: readonly string[],
  newItems = oldItems,
  newBook: typeof fenceBook | typeof next = next,
) {
  const [into, books] = [await folder(), await folder()];
  const book = (of: typeof fenceBook | typeof next, items: readonly string[]) =>
    JSON.stringify({
      ...{ ...of, mark: undefined },
      tables: { items: of.tables.items?.filter(({ code }) => items.includes(String(code))) },
    });
  const [old, prices] = [join(books, "old.json"), join(books, "next.json")];
  await writeFile(old, book(fenceBook, oldItems));
  await writeFile(prices, book(newBook, newItems));
  const job = await writeJob(into, "F-1", { office: old });
  const args = ["rerun", into, "--office", prices, "--as-of", "2026-06-01"];
  return { into, job, args, prices };
}

const all = ["post", "board", "paint"];

test("an old office book that is gone: the price before is not known, and no check counts as new", async () => {
  const { into, args } = await office(all);
  await writeJob(into, "F-1", { office: "gone.json" });
  const { status, out, err } = await command(...args);
  expect(err).toMatch(
    /^The old price of 1 job is not known:\n {2}\S+F-1\.json: its office book: .*gone\.json does not exist/,
  );
  expect(err).toMatch(
    /In 1 job without old figures 1 check fail; whether they failed before is not known/,
  );
  expect(out).toContain("Checks that newly fail: 0 in 0 jobs");
  expect(status).toBe(1);
});

test("items that the old book lacks: one message for the job, with their codes", async () => {
  const { args } = await office(["post"], all);
  const { out, err } = await command(...args);
  expect(err).toMatch(/F-1\.json: its office book invented prices has no row for board, paint\n/);
  expect(out).toContain("Checks that newly fail: 0 in 0 jobs");
});

test("items that the new book lacks: one message for the job, and the checks that fail for that alone", async () => {
  const { args } = await office(all, ["paint"], fenceBook);
  const { status, out, err } = await command(...args);
  expect(err).toMatch(
    /The new office book lacks items of 1 job:\n {2}\S+F-1\.json: post, board \(for that alone 1 check fails\)\n/,
  );
  expect(out).toContain("Checks that newly fail: 0 in 0 jobs");
  expect(status).toBe(1);
});

test("a code without a row that makes no difference is not told", async () => {
  const { into, args, prices } = await office(all);
  const [run] = [{ label: "north", run: 61.7 }];
  await writeJob(into, "F-1", {
    office: prices,
    inputs: { customer: "C", bid_date: "2026-01-01", runs: [run], paint: [{ coats: 2 }] },
  });
  const { err } = await command(...args);
  expect(err).toBe("");
});

test("office books among the jobs are left out, with their names", async () => {
  const { into, args } = await office(all);
  const json = join(into, "a-book.json");
  await writeFile(json, JSON.stringify(next));
  const xlsx = join(into, "b-book.xlsx");
  await writeFile(xlsx, workbook({ sheets: { About: rows(), Items: rows() } }));
  const { status, out, err } = await command(...args.slice(0, 3), json, ...args.slice(4));
  expect(err).toBe("");
  expect(out).toContain("3 files: 1 job, 0 without a result, 0 left out by filters\n");
  expect(out).toContain(`Left out, being office books: ${json}, ${xlsx}\n`);
  expect(status).toBe(1);
});

test("SIGTERM ends a run as Ctrl-C does, and the same command goes on", async () => {
  const { into, args } = await office(all);
  for (let i = 0; i < 60; i++) await writeJob(into, `G-${i}`, { office: args[3] as string });
  const output = join(await folder(), "rerun.xlsx");
  const before = process.listenerCount("SIGTERM");
  const watch = setInterval(() => {
    if (process.listenerCount("SIGTERM") > before) process.emit("SIGTERM");
  }, 1);
  const stopped = await command(...args, "-o", output).finally(() => clearInterval(watch));
  expect(stopped.status).toBe(4);
  expect(stopped.err).toMatch(/Stopped after \d+ of 61 files\. The results so far are kept/);
  const resumed = await command(...args, "-o", output, "--resume");
  expect(resumed.out).toContain("61 files: 61 jobs");
  expect(process.listenerCount("SIGTERM")).toBe(before);
});

test("--resume begins where nothing was done", async () => {
  const { args } = await office(all);
  const { out } = await command(...args, "-o", join(await folder(), "rerun.xlsx"), "--resume");
  expect(out).toContain("1 file: 1 job");
});

test("after --resume, the second evaluator's jobs of both runs are counted", async () => {
  const into = await folder();
  for (let i = 0; i < 40; i++) await writeJob(into, `job-${100 + i}`);
  const asked = options([into], { output: join(await folder(), "rerun.xlsx"), sample: 4 });
  const stop = new AbortController();
  let seen = 0;
  const line = () => {
    seen += 1;
    if (seen === 9) stop.abort();
  };
  const first = await rerun(fenceTrade, undefined, asked, { signal: stop.signal, line });
  expect(first.totals.judged).toBeGreaterThan(3);
  const second = await rerun(fenceTrade, undefined, { ...asked, resume: true });
  // jobs 0, 1, 2, then every fourth of the forty
  expect(second.totals).toMatchObject({ jobs: 40, judged: 12, whole: true });
});

const pipe = async (name: string): Promise<string> => {
  const path = join(await folder(), name);
  await promisify(execFile)("mkfifo", [path]);
  return path;
};

test.skipIf(process.platform === "win32").each<[string, (path: string) => string[]]>([
  ["job.json", (path) => ["show", path]],
  ["job.json", (path) => ["bid", path, "-o", "never.xlsx"]],
  ["job.json", (path) => ["trace", path, "price"]],
  ["job.json", (path) => ["weigh", path]],
  ["job.json", (path) => ["compare", path, path]],
  ["job.json", (path) => ["set", path, "height=5", "--by", "A", "--from", "drawing"]],
  ["bid.xlsx", (path) => ["audit", path]],
  ["bid.xlsx", (path) => ["take", path, "--by", "A"]],
  ["bid.xlsx", (path) => ["show", path]],
  ["book.json", (path) => ["office", path, "--template", "fence"]],
  ["book.xlsx", (path) => ["office", path, "--template", "fence"]],
  ["book.json", (path) => ["rerun", ".", "--office", path]],
  ["lines.jsonl", (path) => ["rerun", "--join", path]],
])("a pipe called %s is refused and not waited for (%#)", async (name, args) => {
  const { status, err } = await command(...args(await pipe(name)));
  expect(status).toBe(2);
  expect(err).toMatch(/not a file/);
});

test.skipIf(process.platform === "win32")(
  "a pipe or a device in a folder is a file without a result",
  async () => {
    const { into, args } = await office(all);
    await promisify(execFile)("mkfifo", [join(into, "a.json"), join(into, "b.xlsx")]);
    await promisify(execFile)("ln", ["-s", "/dev/zero", join(into, "c.json")]);
    const { out } = await command(...args);
    expect(out).toContain("4 files: 1 job, 3 without a result");
  },
);
