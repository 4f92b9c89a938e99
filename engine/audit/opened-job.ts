import type { Value } from "../formula/value.js";
import type { TrailEntry } from "../job/trail/entry.js";
import type { Model } from "../template/model.js";
import type { WorkbookMatch } from "../workbook/match/result.js";

/** A job from a record or a workbook, calculated by the template's formulas. */
export interface OpenedJob {
  readonly source: "record" | "workbook";
  readonly job: string;
  readonly model: Model;
  readonly values: readonly Value[];
  readonly trail: readonly TrailEntry[];
  /** The office book: `name, as of date`. */
  readonly book: string;
  /** What a workbook shows, where it is one. */
  readonly shown?: readonly Value[];
  /** Where the cells of a workbook stand, by their ids. */
  readonly at?: WorkbookMatch["at"];
  /** The paths of all that was read. */
  readonly files: readonly string[];
}
