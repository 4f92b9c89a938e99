import type { Band } from "../tables/hand-work.js";
import { type TradeUnit, tradeUnit } from "../tables/trade-units.js";
import type { Opening } from "./goods.js";

/** The groups of rates, in the order in which they are listed. */
export const rateGroups = ["wage", "burden", "production", "site", "hire", "business"] as const;

/** A rate of the office book that the sheets read, with the unit they need it in. */
export interface Rate extends Opening {
  readonly code: string;
  readonly means: string;
  readonly unit: string;
  readonly group: (typeof rateGroups)[number];
  /** What a new book opens with, in its US unit; none where only the office can know it. */
  readonly usual?: number;
  readonly source?: string;
}

export const practice = "common practice, no source";

/** Work done in an hour of one person. */
export interface ProductionRate extends Rate {
  /** What the work is counted in. */
  readonly counts: TradeUnit;
  readonly usual: number;
  readonly source: string;
  readonly band?: Band;
}

/** What is known of a rate beyond its value. */
type Known = Partial<Pick<ProductionRate, "source" | "band">>;

/** How a task is done: its rate where a machine may come in, and that by hand. */
export interface Ways {
  /** With a machine, or by hand where no machine helps. */
  readonly rate: ProductionRate;
  readonly byHand: ProductionRate;
  /** Share of the man-hours that are spent in the machine's seat. */
  readonly machineShare: number;
}

const ofGroup =
  (group: Rate["group"]) =>
  (code: string, means: string, unit: string): Rate => ({ code, means, unit, group });

export const wage = ofGroup("wage");
export const burden = ofGroup("burden");
export const site = (code: string, means: string, unit: string, usual: number, source = practice): Rate => ({
  ...ofGroup("site")(code, means, unit),
  usual,
  source,
});
export const hire = ofGroup("hire");
export const business = ofGroup("business");

/** Units of work in an hour of one person; `usual` is in the US unit. */
export const production = (
  code: string,
  means: string,
  counts: TradeUnit,
  usual: number,
  { band, source = band === undefined ? practice : `between those of ${band.source}` }: Known = {},
): ProductionRate => ({
  ...ofGroup("production")(code, means, `${counts}/hour`),
  counts,
  usual,
  source,
  ...(band && { band }),
});

/** A task that a machine does, with its share of the hours; `byHand` where no machine gets in. */
export const withMachine = (rate: ProductionRate, machineShare: number, byHand: ProductionRate = rate): Ways => ({
  rate,
  byHand,
  machineShare,
});

/** The unit of a rate as a bid of either system writes it: `‹yd³|m³›/hour`. */
export function rateUnit(unit: string): string {
  const [of = "", an] = unit.split("/");
  if (an === undefined) return unit;
  return `${tradeUnit(of as TradeUnit)}/${tradeUnit(an as TradeUnit)}`;
}
