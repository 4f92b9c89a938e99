import { mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { readOfficeBook } from "../../../engine/book/read.js";
import { run } from "../../../engine/cli/run.js";
import { collect } from "../../../engine/learn/index.js";
import { tradeOf } from "../../../engine/rerun/index.js";
import { modelOf } from "../../../engine/template/models.js";
import { layoutOf } from "../../../engine/template/office-layout.js";
import { learning } from "../../../sheets/learning/learning.js";
import { templates, waterfall } from "../../../sheets/templates/index.js";
import { typedOver } from "../../support/typed-over.js";
import { builtOn, office, writeBecame } from "../learn/built-demo.js";

const small = learning(12);
const model = modelOf(small, "us");

async function command(...args: string[]) {
  let [out, err] = ["", ""];
  const voices = {
    out: (text: string) => {
      out += text;
    },
    err: (text: string) => {
      err += text;
    },
  };
  const status = await run(args, [...templates, small], voices);
  return { status, out, err };
}

let folder: string;
const at = (name: string) => join(folder, name);

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "rillbook-learn-"));
  for (const [i, hours] of [6, 7, 9].entries()) {
    const taken = { 1: { quantity_done: 1, hours_taken: hours } };
    const inputs = builtOn(`2026-0${i + 4}-30`, taken);
    await writeBecame(folder, { job: `G-${i + 1}`, file: `built-${i + 1}.json`, inputs });
  }
  await writeBecame(folder, { job: "G-9", file: "bid.json" });
});
afterAll(() => rm(folder, { recursive: true, force: true }));

const learn = () =>
  command("learn", folder, "--office", office, "-o", at("rates.xlsx"), "--as-of", "2027-03-01");

const take = (rates: string, into: string, output: string) =>
  command("learn", "--take", at(rates), "--into", into, "-o", at(output));

test("where no job is built, each file is told with the reason before the error", async () => {
  const { status, err } = await command(
    "learn",
    at("bid.json"),
    "--office",
    office,
    "-o",
    at("none.xlsx"),
  );
  expect(status).toBe(2);
  expect(err).toMatch(/^left out: 1 file, its state is "bid": \S*bid\.json\nnothing-built: /);
});

describe("from a folder of jobs to an office book", () => {
  let told: Awaited<ReturnType<typeof command>>;
  beforeAll(async () => {
    told = await learn();
  }, 180_000);

  test("learn tells what it took and what not, and writes the workbook", () => {
    expect(told.out).toContain("3 built jobs, 3 rows of tasks.\n");
    expect(told.err).toContain('left out: 1 file, its state is "bid": ');
    expect(told.status).toBe(0);
  });

  test("the workbook is what its template makes", async () => {
    const { out, status } = await command("audit", at("rates.xlsx"));
    expect([status, out.split("\n")[0]]).toEqual([0, "CLEAN"]);
  });

  test("nothing goes into a book that nobody marked", async () => {
    const { status, err } = await command(
      "learn",
      "--take",
      at("rates.xlsx"),
      "--into",
      office,
      "-o",
      at("none.xlsx"),
    );
    expect(status).toBe(2);
    expect(err).toContain("has no rate marked to be taken");
    await expect(readFile(at("none.xlsx"))).rejects.toThrow("ENOENT");
  });

  test("what is marked goes into a new book with its source; every other row stays", async () => {
    const bytes = new Uint8Array(await readFile(at("rates.xlsx")));
    const codes = model.tables.get("book_rates")?.columns.get("code")?.cells ?? [];
    const { given } = await marked(bytes);
    const row = codes.findIndex((_, i) => given.jobs[i] === 3) + 1;
    await writeFile(
      at("marked.xlsx"),
      typedOver(bytes, model, { [`learned.take_it[${row}]`]: true }),
    );
    const { status, out, err } = await take("marked.xlsx", office, "new.xlsx");
    expect([err, status]).toEqual(["", 0]);
    expect(out).toMatch(
      /^set-out \(.*\): [\d.]+ to [\d.]+ each\/hour, from 3 jobs \(G-1, G-2, G-3\), 80% interval /,
    );
    const [old, now] = await Promise.all(
      [office, at("new.xlsx")].map((path) => readOfficeBook(path, layoutOf(waterfall))),
    );
    const changed = (now?.tables.rates ?? []).flatMap((one, i) =>
      JSON.stringify(Object.entries(one).sort()) ===
      JSON.stringify(Object.entries(old?.tables.rates?.[i] ?? {}).sort())
        ? []
        : [one],
    );
    expect(changed).toHaveLength(1);
    expect(changed[0]?.code).toBe("set-out");
    expect(changed[0]?.source).toMatch(
      /^Learned 2027-03-01 from 3 built jobs \(G-1, G-2, G-3\); 80% interval .*; was /,
    );
    expect(now?.tables.items).toEqual(old?.tables.items);
  });

  test("what an older workbook leaves out is left out again, unless it changed or is gone", async () => {
    const bytes = new Uint8Array(await readFile(at("rates.xlsx")));
    const reasons = {
      "evidence.reason[1]": "flood",
      "evidence.reason[2]": "new crew",
      "evidence.reason[3]": "rock",
      // as if it had been told otherwise then, and under another number
      "evidence.hours[2]": 70,
      "evidence.job[3]": "G-7",
    };
    await writeFile(at("older.xlsx"), typedOver(bytes, model, reasons));
    const { status, out, err } = await command(
      ...["learn", folder, "--office", office, "-o", at("again.xlsx"), "--as-of", "2027-03-01"],
      ...["--excluded-in", at("older.xlsx")],
    );
    expect(status).toBe(0);
    expect(out).toMatch(/^Left out again: 1 row: .* of G-1 \(flood\)$/m);
    expect(out).toContain("3 built jobs, 3 rows of tasks.");
    expect(err).toMatch(/^counts again, since .*: .* of G-2 \(new crew\)$/m);
    expect(err).toMatch(/^not among the jobs any more.*: .* of G-7 \(rock\)$/m);
    const { given } = await marked(new Uint8Array(await readFile(at("again.xlsx"))));
    expect(given.jobs).toContain(2);
    expect(given.jobs).not.toContain(3);
  });

  test("the overrun goes into the rules of the book, where it is marked", async () => {
    const bytes = new Uint8Array(await readFile(at("rates.xlsx")));
    await writeFile(at("over.xlsx"), typedOver(bytes, model, { take_overrun: true }));
    const { status, out, err } = await take("over.xlsx", office, "over-book.xlsx");
    expect([err, status]).toEqual(["", 0]);
    expect(out).toMatch(
      /^Overrun of a bid: [+-][\d.]+% in half of the jobs \(P50\), [+-][\d.]+% in one of five \(P80\), from 3 jobs \(G-1, G-2, G-3\)\n/,
    );
    const [old, now] = await Promise.all(
      [office, at("over-book.xlsx")].map((path) => readOfficeBook(path, layoutOf(waterfall))),
    );
    const rule = (name: string) => now?.tables.rules?.find((row) => row.rule === name)?.value;
    expect(rule("hours_over_jobs")).toBe(3);
    expect(rule("hours_over_source")).toBe("Learned 2027-03-01 from 3 built jobs (G-1, G-2, G-3).");
    expect(rule("hours_fifth_over")).toBeGreaterThan(rule("hours_half_over") as number);
    expect(now?.tables.rates).toEqual(old?.tables.rates);
  });

  test("an overrun of other rates is told when rates are taken beside it, and refused where they moved", async () => {
    const { status, err } = await take("marked.xlsx", at("over-book.xlsx"), "beside.xlsx");
    expect(status).toBe(0);
    expect(err).toContain("holds an overrun that was learned with the rates before");
    const refused = await take("over.xlsx", at("new.xlsx"), "refused.xlsx");
    expect([refused.status, refused.err]).toEqual([
      2,
      expect.stringContaining("book-moved: Rate set-out was learned against"),
    ]);
    await expect(readFile(at("refused.xlsx"))).rejects.toThrow("ENOENT");
  });

  test("a book that has moved since is refused", async () => {
    const { status, err } = await command(
      "learn",
      "--take",
      at("marked.xlsx"),
      "--into",
      at("new.xlsx"),
      "-o",
      at("newer.xlsx"),
    );
    expect([status, err]).toEqual([
      2,
      expect.stringContaining("book-moved: Rate set-out was learned against"),
    ]);
  });

  test("a workbook of learned rates among the jobs is no job", async () => {
    const trade = tradeOf([...templates, small]);
    const book = await trade.readBook(office);
    const { passedOver } = await collect([at("marked.xlsx")], trade, book, "work_method");
    expect(passedOver.map(({ because }) => because)).toEqual([
      "it is no job, but a workbook of another kind",
    ]);
  });

  test("a formula typed over is refused", async () => {
    const bytes = new Uint8Array(await readFile(at("marked.xlsx")));
    await writeFile(at("forged.xlsx"), typedOver(bytes, model, { "learned.rate[1]": 99 }));
    const { status, err } = await command(
      "learn",
      "--take",
      at("forged.xlsx"),
      "--into",
      office,
      "-o",
      at("forged-book.xlsx"),
    );
    expect([status, err]).toEqual([
      2,
      expect.stringContaining("was changed in more than its inputs"),
    ]);
  });

  test("a workbook with marks is not written over", async () => {
    await writeFile(at("rates.xlsx"), await readFile(at("marked.xlsx")));
    const { status, err } = await learn();
    expect([status, err]).toEqual([2, expect.stringContaining("output-edited")]);
  });
});

/** Which rows have jobs, as the workbook says. */
async function marked(bytes: Uint8Array) {
  const { readWorkbook } = await import("../../../engine/workbook/read/read.js");
  const { matchWorkbook } = await import("../../../engine/workbook/match/match.js");
  const match = matchWorkbook(readWorkbook(bytes), model);
  const cells = model.tables.get("learned")?.columns.get("jobs")?.cells ?? [];
  return { given: { jobs: cells.map(({ id }) => match.at.get(id)?.cell.value) } };
}

test.each([
  ["no jobs named", [], "options-missing"],
  ["no office book", ["jobs"], "office-missing"],
  ["no file to write", ["jobs", "--office", "o.xlsx"], "output-missing"],
  ["no day", ["jobs", "--office", "o.xlsx", "-o", "r.xlsx", "--as-of", "May"], "date-invalid"],
  [
    "--excluded-in with --take",
    ["--take", "r.xlsx", "--into", "o.xlsx", "-o", "n.xlsx", "--excluded-in", "x.xlsx"],
    "options-missing",
  ],
  ["--into alone", ["jobs", "--into", "o.xlsx"], "options-missing"],
  ["--take without a book", ["--take", "r.xlsx", "-o", "n.xlsx"], "options-missing"],
  ["--take without a file to write", ["--take", "r.xlsx", "--into", "o.xlsx"], "output-missing"],
])("%s is told", async (_, args, code) => {
  const { status, err } = await command("learn", ...args);
  expect([status, err.split(":")[0]]).toEqual([2, code]);
});
