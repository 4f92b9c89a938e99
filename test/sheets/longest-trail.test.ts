import { join } from "node:path";
import { expect, test } from "vitest";
import { identityOf } from "../../engine/book/identity-of.js";
import { loadJob } from "../../engine/book/load-job.js";
import { calculateFast } from "../../engine/evaluate/calculate.js";
import { appended } from "../../engine/job/trail/chain.js";
import { longestTrail, mustFitWorkbook } from "../../engine/job/trail/longest.js";
import { readTrailSheet } from "../../engine/workbook/match/trail-sheet.js";
import { readWorkbook } from "../../engine/workbook/read/read.js";
import { writeWorkbook } from "../../engine/workbook/write/write.js";
import { templates } from "../../sheets/templates/index.js";
import { demoFolder } from "../support/demo.js";

test("the largest demo bid with the longest trail that is let in can be read again", async () => {
  const loaded = await loadJob(join(demoFolder, "hillside-stream.json"), templates);
  const { entries, characters } = longestTrail;
  const trail = appended(
    [],
    Array.from({ length: entries }, (_, i) => ({
      time: "2026-05-04T09:00:00.000Z",
      by: "Estimator A",
      input: "basin_length",
      old: i,
      new: i + 1,
      unit: "ft",
      from: "measured on site" as const,
      note: `${i} `.padEnd(characters / entries - 240, "n"),
    })),
  );
  mustFitWorkbook(trail, "hillside-stream.json");
  expect(JSON.stringify(trail).length).toBeGreaterThan(characters * 0.95);
  const values = calculateFast(loaded.model, loaded.given);
  const bytes = await writeWorkbook(loaded.model, values, { ...identityOf(loaded), trail });
  const read = readTrailSheet(readWorkbook(bytes, { look: true }));
  expect(read?.faults).toEqual([]);
  expect(read?.entries).toHaveLength(entries);
}, 180_000);
