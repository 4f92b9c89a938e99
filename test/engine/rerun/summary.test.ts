import { writeFile } from "node:fs/promises";
import { join } from "node:path";
import { expect, test } from "vitest";
import { progressText } from "../../../engine/rerun/progress.js";
import { rerun } from "../../../engine/rerun/rerun.js";
import type { WorkbookContent } from "../../../engine/workbook/read/content.js";
import { readWorkbookFile } from "../../../engine/workbook/read/read-file.js";
import { fenceTrade, folder, options, writeJob } from "./old-fence.js";

/** Label and contents of the lines of a sheet, by the label in column A. */
function linesOf(content: WorkbookContent, sheet: string): Map<string, unknown[]> {
  const cells = content.sheets.find(({ name }) => name === sheet)?.cells ?? new Map();
  const lines = new Map<string, unknown[]>();
  for (const [address, { value }] of cells) {
    const row = /^A(\d+)$/.exec(address)?.[1];
    if (row === undefined) continue;
    lines.set(
      String(value),
      ["B", "C", "D", "E"].map((letter) => cells.get(`${letter}${row}`)),
    );
  }
  return lines;
}

test("the summary adds up by live formulas, whose results are those of the run", async () => {
  const into = await folder();
  await writeJob(into, "F-1");
  await writeJob(into, "F-2", { version: 4 });
  await writeJob(into, "F-3", { job: "F-1" });
  await writeFile(join(into, "broken.json"), "{");
  const output = join(await folder(), "rerun.xlsx");
  const { totals } = await rerun(fenceTrade, undefined, options([into], { output, moved: true }));
  const content = await readWorkbookFile(output);
  expect(content.sheets.map(({ name }) => name)).toEqual([
    "Totals",
    "Jobs",
    "Sections",
    "Checks",
    "Quotes",
    "Not read",
    "Moved",
  ]);
  const sums = linesOf(content, "Totals");
  expect(sums.get("Price")).toMatchObject([
    { value: totals.price.before, formula: "SUMIF('Jobs'!$T$5:$T$7,1,'Jobs'!$G$5:$G$7)" },
    { value: totals.price.now, formula: "SUMIF('Jobs'!$T$5:$T$7,1,'Jobs'!$H$5:$H$7)" },
    { value: totals.price.now - totals.price.before },
    {},
  ]);
  expect(sums.get("Labor")?.[1]).toMatchObject({ value: totals.sections.get("Labor")?.now });
  expect(sums.get("Jobs")?.[0]).toMatchObject({ value: 3, formula: "COUNTA('Jobs'!$B$5:$B$7)" });
  expect(sums.get("Files that gave no result")?.[0]).toMatchObject({ value: 1 });
  expect(sums.get("items.post")?.[2]).toMatchObject({ value: totals.moved[0]?.by });
  const jobs = content.sheets.find(({ name }) => name === "Jobs")?.cells;
  expect(jobs?.get("U7")?.value).toMatch(/^same job number as .*F-1\.json, which counts$/);
});

test("the progress tells rate and time left", () => {
  expect(progressText(3200, 10_000, 4)).toBe("3,200 of 10,000 files, 800 a second, 9 s left");
  expect(progressText(10, 10_000, 10)).toBe("10 of 10,000 files, 1 a second, 167 min left");
  expect(progressText(0, 5, 0)).toBe("0 of 5 files, 0 a second");
});
