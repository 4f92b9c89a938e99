import { rounded } from "../formula/arithmetic/decimal.js";
import { CellError, type Value } from "../formula/value.js";
import type { Cell, Model } from "../template/model.js";
import { decimalsIn } from "../units/decimals.js";
import { writtenDate } from "./date.js";

/** A value for people: rounded as the workbook shows it, with its unit. */
export function shownValue(model: Model, cell: Cell, values: readonly Value[]): string {
  const value = values[cell.index] ?? null;
  const { declaration } = cell;
  const { quantity, decimals } = declaration;
  if (value === null) return "(blank)";
  if (value instanceof CellError) {
    return value.origin === undefined || value.origin === cell.id
      ? value.code
      : `${value.code} (from ${value.origin})`;
  }
  // a check is named after the fault: a yes beside it would be read as one
  const [yes, no] = cell.declaration.kind === "check" ? ["ok", "fails"] : ["yes", "no"];
  if (typeof value === "boolean") return value ? yes : no;
  if (typeof value === "string") return value;
  if (value === 0 && declaration.kind === "calc" && declaration.zero !== undefined) {
    return declaration.zero;
  }
  const beyond = declaration.kind === "calc" ? declaration.beyond : undefined;
  if (beyond !== undefined && value >= beyond.from) return beyond.says;
  // a date that a formula does not find is a zero, which is no day
  if (quantity.kind === "date") return value === 0 ? "(blank)" : writtenDate(value);
  const places = decimalsIn(quantity, model.system, decimals);
  // halves go up, as in a spreadsheet, also where the binary number lies a hair below; no zero has a sign
  const figure = (shown: number) =>
    (rounded(shown, places) + 0).toLocaleString("en-US", {
      minimumFractionDigits: places,
      maximumFractionDigits: places,
    });
  if (quantity.percent) return `${figure(value * 100)}%`;
  const unit = cell.unit.name;
  if (unit.startsWith("$")) return `$${figure(value)}${unit.slice(1)}`;
  return unit === "" ? figure(value) : `${figure(value)} ${unit}`;
}

/** As `shownValue`, of a value that stands in no list: `1,234.5 lb`. */
export function shown(model: Model, cell: Cell, value: Value): string {
  const only: Value[] = [];
  only[cell.index] = value;
  return shownValue(model, cell, only);
}
