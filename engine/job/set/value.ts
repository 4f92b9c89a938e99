import type { InputValue } from "../../template/declare.js";
import type { Cell } from "../../template/model.js";
import { kept } from "../trail/entry.js";

const number = /^[-+]?(?:\d+\.?\d*|\.\d+)(?:e[-+]?\d+)?$/i;
const yes = new Set(["true", "yes"]);
const no = new Set(["false", "no"]);

/**
 * A value typed on the command line, as the job record holds it: `20%` for a percentage,
 * `yes` or `true`, nothing for blank. What does not fit the kind stays text, so that the
 * check of the record tells it.
 */
export function typedValue({ declaration }: Cell, text: string): InputValue | null {
  const { kind, percent } = declaration.quantity;
  if (text === "") return null;
  if (kind === "yesno") {
    const lower = text.toLowerCase();
    return yes.has(lower) ? true : no.has(lower) ? false : text;
  }
  if (kind !== "number") return text;
  const share = percent && text.endsWith("%");
  const digits = share ? text.slice(0, -1).trim() : text;
  const value = number.test(digits) ? Number(digits) / (share ? 100 : 1) : Number.NaN;
  return Number.isFinite(value) ? kept(value) : text;
}
