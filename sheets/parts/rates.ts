import { type TradeUnit, tradeUnit } from "../tables/trade-units.js";

/** The groups of rates, in the order in which they are listed. */
export const rateGroups = ["wage", "burden", "production", "site", "hire", "business"] as const;

/** A rate of the office book that the sheets read, with the unit they need it in. */
export interface Rate {
  readonly code: string;
  readonly means: string;
  readonly unit: string;
  readonly group: (typeof rateGroups)[number];
}

/** Work done in an hour of one person. */
export interface ProductionRate extends Rate {
  /** What the work is counted in. */
  readonly counts: TradeUnit;
}

const ofGroup =
  (group: Rate["group"]) =>
  (code: string, means: string, unit: string): Rate => ({ code, means, unit, group });

export const wage = ofGroup("wage");
export const burden = ofGroup("burden");
export const site = ofGroup("site");
export const hire = ofGroup("hire");
export const business = ofGroup("business");

export const production = (code: string, means: string, counts: TradeUnit): ProductionRate => ({
  ...ofGroup("production")(code, means, `${counts}/hour`),
  counts,
});

/** The unit of a rate as a bid of either system writes it: `‹yd3|m3›/hour`. */
export function rateUnit(unit: string): string {
  const [of = "", an] = unit.split("/");
  if (an === undefined) return unit;
  return `${tradeUnit(of as TradeUnit)}/${tradeUnit(an as TradeUnit)}`;
}
