import type { FindingCode } from "./finding-codes.js";

/**
 * How bad a finding is. `wrong`: a figure does not follow from the template and the inputs.
 * `doubtful`: it may be meant, and a person should look. `to know`: no fault.
 */
export type Grade = "wrong" | "doubtful" | "to know";

export const grades: readonly Grade[] = ["wrong", "doubtful", "to know"];

/** One thing found in a workbook, and what it should have been. */
export interface Finding {
  readonly grade: Grade;
  readonly code: FindingCode;
  /** The cell or thing: `Sizes!B12`, `sheet Extra`, `the trail`. */
  readonly where: string;
  /** The cell's name, `lift` or `runs.push[2]`, where it has one. */
  readonly name?: string;
  /** All the cells, where one finding stands for many. */
  readonly names?: readonly string[];
  readonly found: string;
  readonly expected: string;
  /** What to do about it. */
  readonly advice: string;
}

/** An input that is not what it was when the workbook was written, or not what the trail gave it. */
export const isChangedInput = ({ code, grade }: Finding): boolean =>
  code === "input-untold" && grade === "doubtful";

const codesOfLook: ReadonlySet<FindingCode> = new Set([
  "hidden",
  "look",
  "number-format",
  "drawn",
  "rule-rewritten",
]);

/** It changes how a page looks, and not what its cells hold. */
export const isOfLook = ({ code, grade }: Finding): boolean =>
  grade !== "to know" && codesOfLook.has(code);
