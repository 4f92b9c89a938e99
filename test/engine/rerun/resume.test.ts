import { appendFile, readFile, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { expect, test } from "vitest";
import type { Line } from "../../../engine/rerun/lines.js";
import { type RerunOptions, rerun } from "../../../engine/rerun/rerun.js";
import { readWorkbookFile } from "../../../engine/workbook/read/read-file.js";
import { fenceTrade, folder, options, writeJob } from "./old-fence.js";

/** Runs until so many lines have come, as if Ctrl-C were pressed then. */
async function stoppedAfter(count: number, asked: RerunOptions) {
  const stop = new AbortController();
  let seen = 0;
  return rerun(fenceTrade, undefined, asked, {
    signal: stop.signal,
    line: () => {
      seen += 1;
      if (seen === count + 1) stop.abort();
    },
  });
}

async function resumed(asked: RerunOptions) {
  const lines: Line[] = [];
  const outcome = await rerun(
    fenceTrade,
    undefined,
    { ...asked, resume: true },
    { line: (line) => lines.push(line) },
  );
  return { outcome, done: lines.flatMap((line) => ("file" in line ? [line.file] : [])) };
}

const parsed = async (path: string): Promise<Line[]> =>
  (await readFile(path, "utf8"))
    .trimEnd()
    .split("\n")
    .map((text) => JSON.parse(text));

async function manyJobs(count: number) {
  const into = await folder();
  for (let i = 0; i < count; i++) await writeJob(into, `job-${100 + i}`);
  const out = join(await folder(), "rerun.xlsx");
  return { into, asked: options([into], { output: out }), lines: out.replace(".xlsx", ".jsonl") };
}

test("a stopped run leaves whole lines and a summary that says it is partial; resumed, it does the rest", async () => {
  const { asked, lines } = await manyJobs(70);
  const stopped = await stoppedAfter(5, asked);
  const left = await parsed(lines);
  expect(stopped.stopped).toEqual({ done: left.length - 1, of: 70 });
  expect(left.length).toBeLessThan(70);
  const partial = await readWorkbookFile(asked.output as string);
  expect(partial.sheets[0]?.cells.get("A2")?.value).toMatch(/^PARTIAL RESULT/);

  const { outcome, done } = await resumed(asked);
  expect(done).toHaveLength(70 - (left.length - 1));
  expect(outcome.stopped).toBeUndefined();
  expect(outcome.totals).toMatchObject({ jobs: 70, compared: 70 });
  const whole = await readWorkbookFile(asked.output as string);
  expect(whole.sheets[0]?.cells.get("A2")?.value).toMatch(
    /^Old jobs under the office book next year/,
  );
});

test("a resumed run gives the lines of one that was not stopped", async () => {
  const { asked, lines } = await manyJobs(40);
  await rerun(fenceTrade, undefined, asked);
  const straight = await parsed(lines);
  await stoppedAfter(3, asked);
  await resumed(asked);
  // workers end in any order
  const results = (all: Line[]) =>
    all
      .flatMap((line) => ("file" in line ? [line] : []))
      .sort((a, b) => (a.file < b.file ? -1 : 1));
  expect(results(await parsed(lines))).toEqual(results(straight));
});

test("resuming does again what changed, and passes over a torn last line", async () => {
  const { into, asked, lines } = await manyJobs(20);
  await rerun(fenceTrade, undefined, asked);
  const whole = await readFile(lines, "utf8");
  await writeFile(lines, whole.slice(0, whole.lastIndexOf('{"line":"end"')));
  await appendFile(lines, '{"line":"job","file":"torn');
  const changed = await writeJob(into, "job-103", { about: "changed" });
  const { outcome, done } = await resumed(asked);
  expect(done).toEqual([changed]);
  expect(outcome.totals.jobs).toBe(20);
});

test.each([
  [{ asOf: "2026-07-01" }, /--as-of was "2026-06-01", and is "2026-07-01" here/],
  [{ office: "old-book" }, /the office book's mark was/],
  [{ versions: "newest" as const }, /--template-version was "own"/],
])("another run cannot be resumed: %o", async (more, message) => {
  const { asked } = await manyJobs(2);
  await stoppedAfter(0, asked);
  await expect(resumed({ ...asked, ...more })).rejects.toThrow(message);
});

test("an unfinished run is not written over", async () => {
  const { asked } = await manyJobs(40);
  await stoppedAfter(1, asked);
  await expect(rerun(fenceTrade, undefined, asked)).rejects.toThrow(/holds an unfinished run/);
});

test("a file that is no result file is not resumed from", async () => {
  const { asked, lines } = await manyJobs(1);
  await writeFile(lines, '{"line":"job"}\n');
  await expect(resumed(asked)).rejects.toThrow(/line 1, is not a line of a rerun/);
});
