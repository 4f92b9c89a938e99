import { CellError, type Value } from "../formula/value.js";

/** A value as JSON holds it. */
export type PlainValue =
  | number
  | string
  | boolean
  | null
  | { readonly error: string; readonly from?: string };

export function plainValue(value: Value | undefined): PlainValue {
  if (value === undefined) return null;
  if (!(value instanceof CellError)) return value;
  return value.origin === undefined
    ? { error: value.code }
    : { error: value.code, from: value.origin };
}
