import { precise, published, table, text } from "../../engine/template/index.js";

/** Units of materials as an office book writes them: the US one, and what a metric book has in its place. */
const pairs = {
  ft: "m",
  "ft²": "m²",
  "yd³": "m³",
  ton: "t",
  lb: "kg",
  gal: "L",
} as const;

type Counted = "each" | "roll" | "hour" | "day" | "load";
export type TradeUnit = keyof typeof pairs | Counted;

interface Size {
  readonly kind: string;
  /** In meters, square or cubic meters, kilograms; 1 for what is counted. */
  readonly size: number;
}

/** Sizes: NIST Special Publication 811, exact. */
const sizes: Readonly<Record<string, Size>> = {
  ft: { kind: "length", size: 0.3048 },
  m: { kind: "length", size: 1 },
  "ft²": { kind: "area", size: 0.09290304 },
  "m²": { kind: "area", size: 1 },
  "yd³": { kind: "volume", size: 0.764554857984 },
  gal: { kind: "volume", size: 0.003785411784 },
  "m³": { kind: "volume", size: 1 },
  L: { kind: "volume", size: 0.001 },
  ton: { kind: "weight", size: 907.18474 },
  lb: { kind: "weight", size: 0.45359237 },
  t: { kind: "weight", size: 1000 },
  kg: { kind: "weight", size: 1 },
};

const counted: readonly Counted[] = ["each", "roll", "hour", "day"];
const money = ["$/hour", "$/day", "$/each", "$/load", "$/ft²", "$/m²", "percent", "factor"];
const made = [...Object.keys(sizes), "each", "load"].map((unit) => `${unit}/hour`);

/** Units in which items may be sold, of both systems. */
export const itemUnits: readonly string[] = [...counted, ...Object.keys(sizes)];

/** Units of wages, production rates, factors and hire, of both systems. */
export const rateUnits: readonly string[] = [...money, ...made];

const anHour = "/hour";

/** The production rate of work that is counted in a unit, as a formula joins it: `unit&"/hour"`. */
export const hourly = (unit: string): string => `${unit}&"${anHour}"`;

/** How a bid of either system writes a unit: `‹ft|m›`. */
export function tradeUnit(unit: TradeUnit): string {
  return Object.hasOwn(pairs, unit) ? `‹${unit}|${pairs[unit as keyof typeof pairs]}›` : unit;
}

/** The same units as formulas write them. */
const measures: Readonly<Record<keyof typeof pairs, string>> = {
  ft: "‹ft|m›",
  "ft²": "‹ft²|m²›",
  "yd³": "‹yd³|m³›",
  ton: "‹ton|t›",
  lb: "‹lb|kg›",
  gal: "‹gal|L›",
};

/** How many of a trade unit make one of the metric unit that takes its place; 1 for what is counted. */
export function metricSize(unit: string): number {
  if (!Object.hasOwn(pairs, unit)) return 1;
  const metric = pairs[unit as keyof typeof pairs];
  return (sizes[metric] as Size).size / (sizes[unit] as Size).size;
}

/** A formula for a quantity as a plain number of trade units; what is counted is one already. */
export function countedIn(quantity: string, unit: TradeUnit): string {
  if (!Object.hasOwn(measures, unit)) return quantity;
  return `(${quantity})/1[${measures[unit as keyof typeof pairs]}]`;
}

/** The units that people choose from in a bid. */
export const unitChoices: readonly string[] = [
  ...counted,
  ...(Object.keys(pairs) as (keyof typeof pairs)[]).map(tradeUnit),
];

const sizeOf = (unit: string): Size => {
  const [of = "", an] = unit.split("/");
  // money for a square foot is more money for a square meter
  const priced = of === "$" && an !== undefined ? sizes[an] : undefined;
  if (priced !== undefined) return { kind: `$ for a ${priced.kind}`, size: 1 / priced.size };
  const known = Object.hasOwn(sizes, of) ? sizes[of] : undefined;
  if (known === undefined) return { kind: unit, size: 1 };
  return an === undefined ? known : { kind: `${known.kind} an ${an}`, size: known.size };
};

const rows = [...itemUnits, ...rateUnits].map((unit) => ({ name: unit, ...sizeOf(unit) }));

/** Every unit of the office book: a book of the other system is read by these, in the open. */
export const tradeUnits = table(
  "trade_units",
  "Units of the office book",
  { rows: rows.length, data: rows },
  {
    name: published(text, "Unit", { source: "the office book's own words" }),
    kind: published(text, "What it measures", { source: "the office book's own words" }),
    size: published(precise, "Size", {
      source: "NIST SP 811, in m, m², m³ or kg; 1 for what is counted",
      decimals: 9,
    }),
  },
);

/** A formula for how many of one unit make one of another; 0 where they measure different things. */
export const unitsIn = (one: string, other: string): string =>
  `UNITS_IN(trade_units.kind,trade_units.size,trade_units.name,${one},${other})`;
