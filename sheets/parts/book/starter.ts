import type { BookRow } from "../../../engine/template/book-layout.js";
import { wordsIn } from "../../../engine/template/index.js";
import { metricSize, type TradeUnit, tradeUnit } from "../../tables/trade-units.js";
import type { Item } from "../goods.js";
import type { Rate } from "../rates.js";
import { rateUnit } from "../rates.js";

/*
 * What stands in a new office book until the office puts its own in: figures so round that nobody takes
 * them for quotes, only near enough that a first bid looks like one. Invented, no source. By the unit or
 * group here; a part says its own figure with its item or rate.
 */

const standIn = {
  supplier: "PLACEHOLDER",
  quoted_on: "2000-01-01",
  good_until: "2099-12-31",
  placeholder: true,
} as const;

const costByUnit: Readonly<Partial<Record<TradeUnit, number>>> = {
  ...{ each: 10, ft: 2, "ft²": 1, "yd³": 50, ton: 100, lb: 1, gal: 50, roll: 100, hour: 50, day: 100, load: 200 },
};

/** A figure of the US unit and its like of the metric one, as round: `‹2|7›`. */
function perUnit(figure: number, metric: number): string {
  return `‹${figure}|${Number((figure * metric).toPrecision(1))}›`;
}

/** Rows of items with costs to start from. */
export const starterItems = (items: readonly Item[]): BookRow[] =>
  items.map(({ code, description, unit, placeholder = costByUnit[unit] ?? 10 }) => ({
    code,
    description,
    unit: tradeUnit(unit),
    cost: perUnit(placeholder, metricSize(unit)),
    ...standIn,
    tax_class: "taxable",
  }));

/** Where the sheets know no usual one. */
const rateByGroup: Readonly<Record<Rate["group"], number>> = {
  ...{ wage: 30, burden: 5, production: 1, site: 1, hire: 100, business: 15 },
};

const rateByUnit: Readonly<Record<string, number>> = { "$/load": 150, "$/ft²": 5, "$/each": 200 };

/** Rows of rates to start from: the usual ones, with their source, else placeholders. */
export const starterRates = (rates: readonly Rate[]): BookRow[] =>
  rates.map(({ code, means, unit, group, usual, source, placeholder = rateByUnit[unit] ?? rateByGroup[group] }) => ({
    code,
    description: wordsIn(means, "us"),
    unit: rateUnit(unit),
    ...(usual === undefined
      ? {
          value: perUnit(placeholder, metricRate(unit)),
          source: "PLACEHOLDER",
          placeholder: true,
        }
      : {
          value: `‹${usual}|${Number((usual * metricRate(unit)).toPrecision(3))}›`,
          ...(source === undefined ? {} : { source }),
        }),
  }));

/** How many metric units make one of a rate's unit; for money, how many of its units one metric unit is. */
function metricRate(unit: string): number {
  const [of = "", an] = unit.split("/");
  return of === "$" && an !== undefined ? metricSize(an) : 1 / metricSize(of);
}

interface Pump {
  readonly code: string;
  readonly description: string;
  readonly cost: number;
  /** Flow at no head, gal/h, and head at no flow, ft. */
  readonly flow: number;
  readonly head: number;
  readonly watts: number;
}

const pumps: readonly Pump[] = [
  { code: "pump-small", description: "PLACEHOLDER: small pump", cost: 300, flow: 3000, head: 16, watts: 200 },
  { code: "pump-medium", description: "PLACEHOLDER: medium pump", cost: 600, flow: 6000, head: 22, watts: 500 },
  { code: "pump-large", description: "PLACEHOLDER: large pump", cost: 1200, flow: 12000, head: 28, watts: 1200 },
];

const litersPerGallon = 3.785411784;
const metersPerFoot = 0.3048;

const rounded = (figure: number, factor: number): string =>
  `‹${Number(figure.toPrecision(2))}|${Number((figure * factor).toPrecision(2))}›`;

/** Pumps whose head falls with the square of the flow. */
export const starterPumps: readonly BookRow[] = pumps.map(({ code, description, cost, flow, head, watts }) => ({
  code,
  description,
  cost,
  ...standIn,
  minimum_water: "‹6|150›",
  variable_speed: false,
  ...Object.assign(
    {},
    ...[0, 0.5, 0.9].map((share, i) => ({
      [`flow_${i + 1}`]: rounded(flow * share, litersPerGallon),
      [`head_${i + 1}`]: rounded(head * (1 - share * share), metersPerFoot),
      [`watts_${i + 1}`]: watts,
    })),
  ),
}));
