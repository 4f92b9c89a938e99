import { type Quantity, ratio, type UnitSystem, unitOf } from "./quantity.js";

/** A length in meters is never shown coarser than this: a centimeter. */
const leastOfMeters = 2;

/**
 * The decimals to show a quantity with. Those asked for are for its US unit: another
 * unit gets as many as make it about as fine, so that 1.52 m does not become 2 m where
 * whole feet were asked for. Without any, the quantity's own.
 */
export function decimalsIn(
  quantity: Quantity,
  system: UnitSystem,
  asked: number | undefined,
): number {
  if (asked === undefined) return quantity.decimals[system];
  const unit = unitOf(quantity, system);
  const us = quantity.units.us;
  if (system === "us" || unit.name === us.name) return asked;
  const finer = Math.round(Math.log10(ratio(unit, us)));
  return Math.max(asked + finer, unit.name === "m" ? leastOfMeters : 0, 0);
}
