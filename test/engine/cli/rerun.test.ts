import { readFile, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { expect, test } from "vitest";
import { run } from "../../../engine/cli/run.js";
import { fenceBook } from "../../support/fence.js";
import { fenceFour, fenceThree, folder, nextBook, writeJob } from "../rerun/old-fence.js";

async function command(...args: string[]) {
  let [out, err] = ["", ""];
  const status = await run(args, [fenceThree, fenceFour], {
    out: (text) => {
      out += text;
    },
    err: (text) => {
      err += text;
    },
  });
  return { status, out, err };
}

async function office() {
  const into = await folder();
  const books = await folder();
  const [old, next] = [join(books, "old.json"), join(books, "next.json")];
  await writeFile(old, JSON.stringify({ ...fenceBook, mark: undefined }));
  await writeFile(next, JSON.stringify({ ...nextBook, mark: undefined }));
  const job = await writeJob(into, "F-1", {
    office: old,
    ranges: {
      height: { low: 5, likely: 5.5, high: 7 },
      margin: { low: 0.1, likely: 0.2, high: 0.3 },
    },
  });
  return { into, old, next, job };
}

test("rerun tells what changed, and ends with 1 where a check newly fails", async () => {
  const { into, next } = await office();
  const { status, out, err } = await command(
    "rerun",
    into,
    "--office",
    next,
    "--as-of",
    "2026-06-01",
    "--moved",
  );
  expect(err).toBe("");
  expect(status).toBe(1);
  expect(out).toBe(
    [
      "1 file: 1 job, 0 without a result, 0 left out by filters",
      "Price of 1 job of which before and now are known: $4,087.02 before, $4,160.02 now (+1.8%)",
      "  items.post moves it by $73.00",
      "Checks that newly fail: 1 in 1 job; quotes expired: 1 in 1 job",
      "A second evaluator agreed on all of the 1 job that it was given.",
      "",
    ].join("\n"),
  );
});

test("--json gives one line after another and nothing else", async () => {
  const { into, next } = await office();
  const { out } = await command("rerun", into, "--office", next, "--json");
  const lines = out
    .trimEnd()
    .split("\n")
    .map((text) => JSON.parse(text));
  expect(lines.map(({ line }) => line)).toEqual(["run", "job", "end"]);
});

test("the parts of a run are joined from the command line", async () => {
  const { into, next } = await office();
  const out = join(await folder(), "rerun.xlsx");
  for (const part of ["1/2", "2/2"]) {
    await command("rerun", into, "--office", next, "-o", out, "--part", part);
  }
  const parts = [1, 2].map((part) => out.replace(".xlsx", `.part-${part}-of-2.jsonl`));
  const joined = await command("rerun", "--join", ...parts, "-o", out);
  expect(joined).toMatchObject({ status: 1, err: "" });
  expect((await readFile(out)).subarray(0, 2).toString()).toBe("PK");
});

test.each([
  [["rerun", "jobs"], /--office <file>/],
  [["rerun", "jobs", "--office", "b.json", "--resume"], /--resume needs the -o/],
  [["rerun", "jobs", "--office", "b.json", "--sample", "often"], /whole number/],
  [["rerun", "jobs", "--office", "b.json", "--part", "0/3"], /must be like 3\/16/],
])("%o is refused", async (args, message) => {
  const { status, err } = await command(...args);
  expect(status).toBe(2);
  expect(err).toMatch(message);
});

test("weigh tells effects, swings, and the spread beside the contingency", async () => {
  const { job } = await office();
  const { status, out } = await command("weigh", job, "--draws", "2000", "--top", "3");
  expect(status).toBe(0);
  expect(out).toMatch(/^Price \$4,087\.02, cost \$3,433\.09\n/);
  expect(out).toMatch(
    /margin \(Margin on price\) from 0\.1 to 0\.3 : price \$3,632\.90 to \$4,670\.87/,
  );
  expect(out).toMatch(
    /over 2,000 draws of the ranges \(triangular, each by itself\), seed 1: mean/,
  );
  expect(out).toMatch(
    /the bid carries a contingency of \$163\.48, and \d+% of the draws stay within both/,
  );
});

test("weigh --since splits what moved the price by input and by item", async () => {
  const { into, old, next } = await office();
  const before = await writeJob(into, "before", { office: old });
  const inputs = JSON.parse(await readFile(before, "utf8")).inputs;
  const after = await writeJob(into, "after", {
    office: next,
    inputs: { ...inputs, margin: 0.25 },
  });
  const { out } = await command("weigh", after, "--since", before, "--json");
  const { moved } = JSON.parse(out);
  expect(moved.items.map(({ item }: { item: string }) => item)).toEqual(["margin", "items.post"]);
  const sum = moved.items.reduce((all: number, { by }: { by: number }) => all + by, moved.together);
  expect(sum).toBeCloseTo(moved.to - moved.from, 9);
  // posts: 16 at $3.65 more; alone with the old margin, together with the new one
  expect(moved.items[1].by).toBeCloseTo((16 * 3.65) / 0.8, 8);
  expect(moved.together).toBeCloseTo(16 * 3.65 * (1 / 0.75 - 1 / 0.8), 8);
});

test("weigh takes the office book of the other record from --since-office", async () => {
  const { old, next, job } = await office();
  const moved = async (...books: string[]) => {
    const args = ["--draws", "10", "--since", job, "--office", next, ...books, "--json"];
    return JSON.parse((await command("weigh", job, ...args)).out).moved.items;
  };
  const items = await moved("--since-office", old);
  expect(items).toEqual([expect.objectContaining({ item: "items.post" })]);
  expect(await moved("--since-office", next)).toEqual([]);
});

test("files that give no result are named, each with the reason", async () => {
  const { into, next } = await office();
  await writeFile(join(into, "broken.json"), "{");
  await writeFile(join(into, "other.json"), '{"rillbook":1,"template":"none"}');
  const { status, out, err } = await command("rerun", into, "--office", next);
  expect(status).toBe(1);
  expect(out).toMatch(/^3 files: 1 job, 2 without a result, /);
  expect(err).toMatch(
    /^2 files without a result:\n {2}\S*broken\.json is not valid JSON: .*\n {2}\S*other\.json names the template "none", .*\n/m,
  );
});
