import { addressOf } from "../address.js";
import type { Cell } from "../template/model.js";

/** The inputs that a job lacks, for people: each with its label, its name and its cell. */
export function missingLines(missing: readonly Cell[]): string {
  if (missing.length === 0) return "";
  const lines = missing.map(
    ({ id, declaration, sheet, column, line }) =>
      `  ${declaration.label} (${id}, ${sheet}!${addressOf(column, line)})\n`,
  );
  return `Still missing, in the order of the walk:\n${lines.join("")}`;
}
