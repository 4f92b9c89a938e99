import type { SettledMeasure } from "../formula/named-formula.js";
import type { Value } from "../formula/value.js";
import { shown } from "../job/shown-value.js";
import type { Cell, Model } from "../template/model.js";
import { decimalsIn } from "../units/decimals.js";
import { type UnitSystem, unitOf } from "../units/quantity.js";
import { unitNamed } from "../units/unit.js";
import type { NumberStyle } from "./written.js";

export function styleOf(cell: Cell, system: UnitSystem): NumberStyle {
  const { quantity, decimals } = cell.declaration;
  return {
    unit: quantity.kind === "number" ? cell.unit.name : "",
    kind: quantity.kind,
    percent: quantity.percent,
    decimals: decimalsIn(quantity, system, decimals),
  };
}

/** Bare numbers in a stated unit have no decimals of their own: six significant digits are shown. */
export function styleOfMeasure(
  measure: SettledMeasure,
  system: UnitSystem,
  value: Value,
): NumberStyle {
  if (typeof measure !== "string") {
    const { kind, percent, decimals } = measure;
    const unit = kind === "number" ? unitOf(measure, system).name : "";
    return { unit, kind, percent, decimals: decimals[system] };
  }
  return { unit: measure, kind: "number", percent: false, decimals: decimalsFor(value, 6) };
}

function decimalsFor(value: Value, digits: number): number {
  if (typeof value !== "number" || value === 0) return 2;
  const whole = Math.floor(Math.log10(Math.abs(value))) + 1;
  return Math.min(Math.max(digits - whole, 0), 20);
}

/** As `shown`, for the result of a named formula. */
export function shownMeasure(
  model: Model,
  home: Cell,
  value: Value,
  measure: SettledMeasure,
  { decimals }: NumberStyle,
): string {
  const quantity =
    typeof measure === "string"
      ? { ...home.declaration.quantity, kind: "number" as const, percent: false }
      : measure;
  const unit = typeof measure === "string" ? unitNamed(measure) : unitOf(measure, model.system);
  // the decimals are already those of this unit
  const here = { ...quantity, units: { us: unit, si: unit } };
  const declaration = { ...home.declaration, quantity: here, decimals } as Cell["declaration"];
  return shown(model, { ...home, declaration, unit }, value);
}
