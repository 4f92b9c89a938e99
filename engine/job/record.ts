import type { InputValue } from "../template/declare.js";
import type { UnitSystem } from "../units/quantity.js";
import type { TrailEntry } from "./trail/entry.js";

/** A row of a table in a job record: by column. */
export type RowValues = Readonly<Record<string, InputValue | null>>;

/** What a job record holds for its inputs: by name, tables as lists of rows; a null row stays blank. */
export type InputValues = Readonly<
  Record<string, InputValue | null | readonly (RowValues | null)[]>
>;

/** How far an input may turn out to lie from what the bid says, in the unit of the input. */
export interface Range {
  readonly low: number;
  readonly likely: number;
  readonly high: number;
}

/** One bid's inputs, as kept in a file. Numbers are in the units of `units`. */
export interface JobRecord {
  /** The version of this file format. */
  readonly rillbook: 1;
  readonly job: string;
  readonly template: string;
  readonly version: number;
  readonly units: UnitSystem;
  /** Free words about the record; says so where the job is invented. */
  readonly about?: string;
  /** Path of the office book, from the folder of the record. */
  readonly office?: string;
  readonly inputs: InputValues;
  /** Low, likely and high values of inputs that are not sure, by name: `lift`, `runs.length[2]`. */
  readonly ranges?: Readonly<Record<string, Range>>;
  /** What each input means; written by `start`, read by people only. */
  readonly guide?: unknown;
  /** History of the inputs. */
  readonly trail?: readonly TrailEntry[];
}
