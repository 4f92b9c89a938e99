import { CellError, type Value } from "../../../engine/formula/value.js";

/**
 * Whether two values are the same: numbers to `part` of their size (files carry 15 digits),
 * and to 1e-15 where 0 is expected; errors by code; all else exactly.
 */
export function agree(actual: Value, expected: Value, part = 1e-14): boolean {
  if (typeof actual === "number" && typeof expected === "number") {
    const allowed = expected === 0 ? 1e-15 : Math.abs(expected) * part;
    return Math.abs(actual - expected) <= allowed;
  }
  if (actual instanceof CellError && expected instanceof CellError) {
    return actual.code === expected.code;
  }
  return actual === expected;
}

/** A value as a failure message shows it. */
export const shown = (value: Value) =>
  value instanceof CellError ? value.code : JSON.stringify(value);
