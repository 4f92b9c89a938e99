import { type Quantity, ratio, type UnitSystem, unitOf } from "../units/quantity.js";
import type { InputValue } from "./declare.js";

/** A value given in the unit of one system, in the unit of another, to 15 digits; the value itself within one. */
export function converted(
  value: InputValue,
  quantity: Quantity,
  from: UnitSystem,
  to: UnitSystem,
): InputValue {
  if (typeof value !== "number" || from === to) return value;
  return Number((value * ratio(unitOf(quantity, from), unitOf(quantity, to))).toPrecision(15));
}
