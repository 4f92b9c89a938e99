import { mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { expect, test } from "vitest";
import { join as joined } from "../../engine/rerun/join.js";
import { rerun } from "../../engine/rerun/rerun.js";
import type { WorkbookContent } from "../../engine/workbook/read/content.js";
import { readWorkbookFile } from "../../engine/workbook/read/read-file.js";
import { asText, builtLines } from "../engine/rerun/built-lines.js";
import { fenceTrade, options, writeJob } from "../engine/rerun/old-fence.js";
import { plantWrongValues } from "../support/plant.js";
import { recalculate } from "./soffice.js";

/** Every formula shows in the one workbook what it shows in the other. */
function same(written: WorkbookContent | undefined, again: WorkbookContent): void {
  for (const { name, cells } of written?.sheets ?? []) {
    const other = again.sheets.find((sheet) => sheet.name === name)?.cells;
    for (const [address, { value, formula }] of cells) {
      if (formula === undefined) continue;
      const found = other?.get(address)?.value ?? "";
      if (typeof value === "number") expect(found, `${name}!${address}`).toBeCloseTo(value, 8);
      else expect(found, `${name}!${address}`).toBe(value ?? "");
    }
  }
}

test("LibreOffice recalculates every sum of a rerun's summary to the value that was written", async () => {
  const folder = await mkdtemp(join(tmpdir(), "rillbook-summary-"));
  try {
    const jobs = await mkdtemp(join(folder, "jobs-"));
    for (const [job, version] of [
      ["F-1", 3],
      ["F-2", 4],
      ["F-3", 3],
    ] as const) {
      await writeJob(jobs, job, { version });
    }
    await writeJob(jobs, "F-4", { job: "F-1" });
    await writeJob(jobs, "F-5", { office: "gone-book" });
    const output = join(folder, "rerun.xlsx");
    await rerun(fenceTrade, undefined, options([jobs], { output, moved: true }));
    const built = join(folder, "built.xlsx");
    await writeFile(join(folder, "built.jsonl"), asText(builtLines()));
    await joined([join(folder, "built.jsonl")], built);
    const outputs = [output, built];
    const written = await Promise.all(outputs.map((one) => readWorkbookFile(one)));

    for (const one of outputs) {
      const planted = plantWrongValues(new Uint8Array(await readFile(one)));
      expect(planted.planted).toBeGreaterThan(40);
      await writeFile(one, planted.bytes);
    }
    const paths = await recalculate(outputs, join(folder, "out"));
    for (const [i, path] of paths.entries()) same(written[i], await readWorkbookFile(path));
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
});
