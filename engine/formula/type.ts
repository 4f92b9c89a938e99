import {
  type Dimension,
  describeDimension,
  dimensionless,
  sameDimension,
} from "../units/dimension.js";
import type { Quantity, UnitSystem } from "../units/quantity.js";
import { unitOf } from "../units/quantity.js";
import type { Unit } from "../units/unit.js";

/**
 * What a formula yields. A number has a dimension and the size of its unit in SI
 * base units; a literal zero fits any dimension. `range` marks a whole column.
 */
export type Type = { readonly range: boolean } & (
  | { readonly kind: "number"; readonly dimension: Dimension; readonly size: number }
  | { readonly kind: "zero" }
  | { readonly kind: "text" }
  | { readonly kind: "yesno" }
);

export type NumberType = Extract<Type, { kind: "number" }>;

export const plain: NumberType = {
  kind: "number",
  dimension: dimensionless,
  size: 1,
  range: false,
};
export const textType: Type = { kind: "text", range: false };
export const yesnoType: Type = { kind: "yesno", range: false };
export const zeroType: Type = { kind: "zero", range: false };

export function typeOfUnit(unit: Unit, range = false): NumberType {
  return { kind: "number", dimension: unit.dimension, size: unit.size, range };
}

export function typeOfQuantity(quantity: Quantity, system: UnitSystem, range = false): Type {
  if (quantity.kind === "text") return { kind: "text", range };
  if (quantity.kind === "yesno") return { kind: "yesno", range };
  return typeOfUnit(unitOf(quantity, system), range);
}

export function describeType(type: Type): string {
  if (type.kind === "number") return describeDimension(type.dimension);
  return { zero: "zero", text: "text", yesno: "yes or no" }[type.kind];
}

/** Can a value of one type stand where the other is asked for (a change of scale allowed)? */
export function fits(type: Type, wanted: Type): boolean {
  if (type.kind === "zero") return wanted.kind === "number" || wanted.kind === "zero";
  if (type.kind === "number" && wanted.kind === "number") {
    return sameDimension(type.dimension, wanted.dimension);
  }
  return type.kind === wanted.kind;
}
