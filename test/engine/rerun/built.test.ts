import { copyFile, readFile, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { join as joined } from "../../../engine/rerun/join.js";
import type { AgainstBuilt, JobLine } from "../../../engine/rerun/lines.js";
import { Rerunner } from "../../../engine/rerun/rerun-one.js";
import { tradeOf } from "../../../engine/rerun/trade.js";
import { readWorkbookFile } from "../../../engine/workbook/read/read-file.js";
import { templates } from "../../../sheets/templates/index.js";
import { demoFolder } from "../../support/demo.js";
import { asText, builtJobs, builtLines } from "./built-lines.js";
import { folder } from "./old-fence.js";

async function totalsOf(jobs = builtJobs) {
  const path = join(await folder(), "run.jsonl");
  await writeFile(path, asText(builtLines(jobs)));
  const output = join(await folder(), "summary.xlsx");
  const { totals } = await joined([path], output);
  return { totals, output };
}

// A, B and C: made over bid 10 %, 26 %, -5 %; over what would be bid now 0, 5 %, -5 %
test("jobs told whole are compared, each once: their middle, and how many stayed within", async () => {
  const { totals } = await totalsOf();
  const { partial, ...built } = totals.built;
  expect(built).toEqual({
    ...{ rows: 6, compared: 3, foretold: 3 },
    ...{ overBid: expect.closeTo(0.1, 9), overNow: expect.closeTo(0, 9) },
    ...{ offBid: expect.closeTo(0.1, 9), offNow: expect.closeTo(0.05, 9) },
    // C alone within its bid and 300; now A too; with 1500 for P80 B as well
    ...{ withinBid: 1, withinNow: 2, withinFifth: 3 },
  });
  expect(partial).toMatchObject({
    count: 2,
    first: ["jobs/3-D.json: Counted as planned: 30 h.", "jobs/4-E.json: it names no office book"],
  });
  expect([totals.books, totals.learned]).toEqual([["jobs/office.xlsx"], ["jobs/rates.xlsx"]]);
});

test("the middle of two is their mean, and of none nothing", async () => {
  const two = await totalsOf([builtJobs[0], builtJobs[1]] as typeof builtJobs);
  expect(two.totals.built.overBid).toBeCloseTo(0.18, 9);
  const none = await totalsOf([builtJobs[3]] as typeof builtJobs);
  expect([none.totals.built.overBid, none.totals.built.compared]).toEqual([undefined, 0]);
});

test("the summary has a line for each built job; what is not compared shows no share", async () => {
  const { output } = await totalsOf();
  const { sheets } = await readWorkbookFile(output);
  const cells = sheets.find(({ name }) => name === "Built")?.cells;
  const at = (address: string) => cells?.get(address)?.value ?? null;
  expect(["C5", "I5", "J6", "L6", "R7", "S6", "T6"].map(at)).toEqual([
    ...[1, 1000, expect.closeTo(0.26, 9), expect.closeTo(0.05, 9), 1, 0, 1],
  ]);
  expect(["C8", "J8", "U8"].map(at)).toEqual([0, "", "Counted as planned: 30 h."]);
  expect(at("U10")).toBe("same job number as jobs/2-C.json, which counts");
  const plain = await totalsOf([builtJobs[6]] as typeof builtJobs);
  const names = (await readWorkbookFile(plain.output)).sheets.map(({ name }) => name);
  expect(names).not.toContain("Built");
});

describe("over invented jobs that were built", () => {
  test("a job's cost as it came is its own, whatever the new book says", async () => {
    const into = await folder();
    for (const name of ["corner-oak", "side-hours"]) {
      const text = await readFile(join(demoFolder, "built", `${name}.json`), "utf8");
      const record = { ...JSON.parse(text), office: join(demoFolder, "office-book.json") };
      await writeFile(join(into, `${name}.json`), JSON.stringify(record));
    }
    const book = JSON.parse(await readFile(join(demoFolder, "office-book.json"), "utf8"));
    const dearer = (row: { code: string; value: number }) =>
      row.code === "wage-laborer" ? { ...row, value: row.value * 1.5 } : row;
    const rules = [
      ["hours_half_over", 0.05],
      ["hours_fifth_over", 0.2],
      ["hours_over_jobs", 9],
    ].map(([rule, value]) => ({ rule, value }));
    const tables = {
      ...book.tables,
      rates: book.tables.rates.map(dearer),
      rules: [...book.tables.rules, ...rules],
    };
    const office = join(await folder(), "office.json");
    await writeFile(office, JSON.stringify({ ...book, tables }));
    await copyFile(office, join(into, "office.json"));
    const trade = tradeOf(templates);
    const asked = { versions: "own", day: 46_000, filters: [], moved: false } as const;
    // by one evaluator: that both agree is asked of every rerun
    const rerunner = new Rerunner(trade, { ...asked, book: await trade.readBook(office) });
    const lineOf = async (name: string) => {
      const [done] = await rerunner.run([{ file: join(into, `${name}.json`), judged: false }]);
      return done !== undefined && "line" in done ? done.line : undefined;
    };
    const builtOf = async (name: string) => ((await lineOf(name)) as JobLine).built as AgainstBuilt;
    const [oak, side] = [await builtOf("corner-oak"), await builtOf("side-hours")];
    // as sheet Look back of the job says under its own book: $10,450.89 planned, $11,279.97 made
    expect(oak).toMatchObject({
      ...{ bid: expect.closeTo(10450.89, 2), made: expect.closeTo(11279.97, 2) },
      ...{ toldWhole: true, leftOut: "Counted as planned: overhead." },
    });
    expect(oak?.now).toBeGreaterThan(10450.89 + 100);
    expect(oak?.covered).toBeGreaterThan(100);
    expect(side).toMatchObject({ toldWhole: false });
    expect(await lineOf("office")).toMatchObject({ line: "skipped", because: "office book" });
  });
});
