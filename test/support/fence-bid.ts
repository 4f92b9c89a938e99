import { calculate } from "../../engine/evaluate/calculate.js";
import { appended } from "../../engine/job/trail/chain.js";
import type { Change, TrailEntry } from "../../engine/job/trail/entry.js";
import { modelOf } from "../../engine/template/models.js";
import { writeWorkbook } from "../../engine/workbook/write/write.js";
import { fence, fenceGiven, fenceIdentity, fenceJob } from "./fence.js";

const entry = (input: string, value: number | string, unit: string, from: Change["from"]) => ({
  time: "2026-05-04T09:00:00.000Z",
  by: "Estimator A",
  input,
  old: null,
  new: value,
  unit,
  from,
});

/** A trail for the invented fence job: most inputs told, one an assumption. */
export const fenceTrail: readonly TrailEntry[] = appended(
  [],
  [
    entry("customer", "Customer One", "", "office rule"),
    entry("bid_date", "2026-05-04", "", "office rule"),
    entry("height", 5.5, "ft", "drawing"),
    entry("soil", "clay", "", "assumption"),
    ...["north", "east", "gate side"].map((label, i) =>
      entry(`runs.label[${i + 1}]`, label, "", "drawing"),
    ),
    ...[61.7, 33.25, 12].map((run, i) =>
      entry(`runs.run[${i + 1}]`, run, "ft", "measured on site"),
    ),
    entry("paint.coats[2]", 3, "", "office rule"),
  ],
);

export const fenceModel = modelOf(fence, "us");
export const fenceValues = calculate(fenceModel, fenceGiven(fenceModel));

/** The invented fence job as a workbook. */
export const fenceWorkbook = (): Promise<Uint8Array> =>
  writeWorkbook(fenceModel, fenceValues, { ...fenceIdentity(fenceModel), trail: fenceTrail });

export const fenceRecord = { ...fenceJob, trail: fenceTrail };
