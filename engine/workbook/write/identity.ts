import type { TrailEntry } from "../../job/trail/entry.js";
import type { UnitSystem } from "../../units/quantity.js";

/** What a workbook says of itself, on its Summary sheet and in its custom properties. */
export interface Identity {
  readonly job: string;
  readonly template: string;
  readonly version: number;
  readonly units: UnitSystem;
  readonly about?: string;
  readonly book: string;
  readonly bookAsOf: string;
  readonly bookMark: string;
  /** Path of the office book as the job record names it. */
  readonly office?: string;
  /** The history of the inputs; none where left out. */
  readonly trail?: readonly TrailEntry[];
}
