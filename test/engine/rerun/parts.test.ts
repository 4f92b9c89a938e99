import { join as pathOf } from "node:path";
import { expect, test } from "vitest";
import { join } from "../../../engine/rerun/join.js";
import { inPart, partOf } from "../../../engine/rerun/part.js";
import { linesPath, rerun } from "../../../engine/rerun/rerun.js";
import { fenceTrade, folder, options, writeJob } from "./old-fence.js";

const parts = [1, 2, 3].map((part) => ({ part, of: 3 }));
const firstPart = { part: 1, of: 3 };

async function inParts(count: number) {
  const into = await folder();
  for (let i = 0; i < count; i++) await writeJob(into, `job-${i}`);
  const output = pathOf(await folder(), "rerun.xlsx");
  for (const part of parts) {
    const { summary } = await rerun(fenceTrade, undefined, options([into], { output, part }));
    expect(summary).toBeUndefined();
  }
  const files = parts.map((part) => linesPath(output, part));
  return { into, output, files };
}

test("joined parts give the totals of one run", async () => {
  const { into, output, files } = await inParts(12);
  const { totals } = await join(files, output);
  const whole = await rerun(fenceTrade, undefined, options([into]));
  // every part has its own first jobs calculated twice
  expect({ ...totals, judged: 0 }).toEqual({ ...whole.totals, judged: 0 });
});

test.each([
  [(files: string[]) => files.slice(1), /2 of 3 parts are here; missing: 1/],
  [(files: string[]) => [...files, files[0] as string], /is part 1, as .* is/],
])("parts must all be there, each once", async (choose, message) => {
  const { files } = await inParts(3);
  await expect(join(choose(files), undefined)).rejects.toThrow(message);
});

test("parts of different runs are not joined", async () => {
  const { into, output, files } = await inParts(3);
  await rerun(
    fenceTrade,
    undefined,
    options([into], { output, part: firstPart, asOf: "2026-09-09" }),
  );
  await expect(join(files, undefined)).rejects.toThrow(/--as-of/);
});

test("a whole run is no part", async () => {
  const into = await folder();
  await writeJob(into, "one");
  const output = pathOf(await folder(), "rerun.xlsx");
  await rerun(fenceTrade, undefined, options([into], { output }));
  await expect(join([linesPath(output)], undefined)).rejects.toThrow(/not one part/);
});

test("every path belongs to one part, and the parts are about as large", () => {
  const counts = new Array(16).fill(0);
  for (let i = 0; i < 16_000; i++) {
    const path = `jobs/2026/job-${i}.json`;
    const at = counts.map((_, k) => inPart(path, { part: k + 1, of: 16 }));
    expect(at.filter(Boolean)).toHaveLength(1);
    counts[at.indexOf(true)] += 1;
  }
  // 1,000 each; five standard deviations of the binomial are 153
  expect(Math.min(...counts)).toBeGreaterThan(847);
  expect(Math.max(...counts)).toBeLessThan(1153);
});

test.each(["0/4", "5/4", "1", "a/b", "1/0", "-1/3"])("--part %s is refused", (written) => {
  expect(() => partOf(written)).toThrow(/must be like 3\/16/);
});
