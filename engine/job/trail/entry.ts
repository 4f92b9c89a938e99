import type { InputValue } from "../../template/declare.js";

/** Where a number can come from. */
export const origins = [
  "measured on site",
  "drawing",
  "supplier's quote",
  "published table",
  "office rule",
  "assumption",
  "told after the work",
  "template default",
  "office book",
  "changed in the workbook",
] as const;

export type OriginName = (typeof origins)[number];

/** One change of one input, or a statement of where its value comes from. */
export interface TrailEntry {
  /** From 1, without gaps. */
  readonly number: number;
  /** UTC, as ISO 8601 with milliseconds. */
  readonly time: string;
  readonly by: string;
  /** `lift`, or `runs.length[3]`. */
  readonly input: string;
  /** Null where it was blank. Numbers in `unit`, to 15 digits; dates as `2026-05-31`. */
  readonly old: InputValue | null;
  readonly new: InputValue | null;
  readonly unit: string;
  readonly from: OriginName;
  readonly note?: string;
  /** SHA-256 over the entry and the hash of the one before. */
  readonly hash: string;
}

/** Stands for the name where nobody said who made a change: the audit doubts such an entry until somebody is named. */
export const nobodyNamed = "nobody named";

/** An entry before it takes its place in the trail. */
export type Change = Omit<TrailEntry, "number" | "hash">;

/** A number as a spreadsheet program stores it: 15 digits come back the same from any of them. */
export const kept = (value: InputValue | null): InputValue | null =>
  typeof value === "number" && !Number.isSafeInteger(value) ? Number(value.toPrecision(15)) : value;

/** Names and notes stand in one line: breaks and control characters become spaces. */
export const oneLine = (text: string): string => text.replaceAll(/[\s\p{Cc}]+/gu, " ").trim();
