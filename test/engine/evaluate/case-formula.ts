import type { Argument, Value } from "../../../engine/formula/value.js";
import type { FunctionCase } from "./cases.js";

/** A case as a formula on a sheet of its own: the formula in A1, ranges in columns C, D … */
export interface CaseFormula {
  /** Without the leading `=`. */
  readonly formula: string;
  readonly columns: readonly (readonly Value[])[];
}

const isColumn = (argument: Argument): argument is readonly Value[] => Array.isArray(argument);

function literal(value: Value): string {
  if (typeof value === "string") return `"${value.replaceAll('"', '""')}"`;
  if (typeof value === "boolean") return value ? "TRUE()" : "FALSE()";
  // hyperformula reads 1e-5 and refuses 1E-5.
  return String(value).toLowerCase();
}

/** Writes a case as a formula, the first row of its columns being `row`. */
export function caseFormula(given: FunctionCase, row = 1): CaseFormula {
  const columns: (readonly Value[])[] = [];
  const texts = given.args.map((argument) => {
    const column = isColumn(argument) ? argument : argument === null ? [null] : undefined;
    if (column === undefined) return literal(argument as Value);
    columns.push(column);
    const letter = String.fromCharCode(66 + columns.length);
    const first = `${letter}${row}`;
    return isColumn(argument) ? `${first}:${letter}${row + column.length - 1}` : first;
  });
  return { formula: `${given.name}(${texts.join(",")})`, columns };
}

/** The label of a case in test output. */
export function caseLabel(given: FunctionCase): string {
  const text = (argument: Argument) =>
    isColumn(argument) ? `{${argument.map((v) => v ?? "").join(";")}}` : (argument ?? "(blank)");
  return `${given.name}(${given.args.map(text).join(", ")})`;
}
