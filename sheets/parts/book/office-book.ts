import type { BookColumn, BookLayout, BookRow } from "../../../engine/template/book-layout.js";
import { placeholderColumn } from "../../../engine/template/book-layout.js";
import { itemUnits, rateUnits } from "../../tables/trade-units.js";
import type { Whole } from "../brought.js";
import { capacity } from "../capacity.js";
import { machineLayout } from "./machine-layout.js";
import { placeLayout } from "./place-layout.js";
import { starterItems, starterPumps, starterRates } from "./starter.js";

const code: BookColumn = {
  key: "code",
  kind: "code",
  required: true,
  means: "What the office calls it; each code once.",
};

const description: BookColumn = {
  key: "description",
  kind: "text",
  required: true,
  means: "What it is, in words for the crew.",
};

const quote: readonly BookColumn[] = [
  { key: "supplier", kind: "text", required: true, means: "Who quoted the price." },
  { key: "quoted_on", kind: "date", required: true, means: "Day of the quote." },
  { key: "good_until", kind: "date", required: true, means: "Last day on which the price holds." },
];

/** Points of a curve that a pump can have. */
const { curvePoints } = capacity;
const fewestPoints = 3;

const points: readonly BookColumn[] = Array.from({ length: curvePoints }, (_, i) => i + 1).flatMap(
  (point): BookColumn[] => {
    const needed = point <= fewestPoints;
    const figure = (key: string, means: string, required: boolean): BookColumn => {
      return { key: `${key}_${point}`, kind: "number", least: 0, required, means };
    };
    return [
      figure("flow", `Flow at point ${point} of the curve, full speed, ‹gal/h|L/h›.`, needed),
      figure("head", `Head at point ${point} of the curve, full speed, ‹ft|m›.`, needed),
      figure("watts", `Power drawn at point ${point}, W; blank where not known.`, false),
    ];
  },
);

/** The tables of the office book, and what each column may hold. */
export const officeBookLayout = ({ items, rates }: Pick<Whole, "items" | "rates">): BookLayout => [
  {
    name: "items",
    sheet: "Items",
    means: "What is bought: one row for each item, priced by its unit.",
    starter: starterItems(items),
    columns: [
      code,
      description,
      {
        key: "unit",
        kind: "text",
        required: true,
        choices: itemUnits,
        means: "What one unit is; the cost is for one of these.",
      },
      {
        key: "pack",
        kind: "number",
        least: 0.001,
        means: "How many units are sold together; blank for one.",
      },
      { key: "cost", kind: "number", required: true, least: 0, means: "Cost of one unit, $." },
      ...quote,
      {
        key: "tax_class",
        kind: "text",
        required: true,
        means: "Class of sales tax, as in the table of taxes of the bid.",
      },
      placeholderColumn,
    ],
  },
  {
    name: "pumps",
    starter: starterPumps,
    sheet: "Pumps",
    means: "Pumps with their curves: at least three points, by rising flow.",
    columns: [
      code,
      description,
      { key: "cost", kind: "number", required: true, least: 0, means: "Cost of the pump, $." },
      ...quote,
      {
        key: "recommended_low",
        kind: "number",
        least: 0,
        means: "Least flow that the maker recommends, ‹gal/h|L/h›.",
      },
      {
        key: "recommended_high",
        kind: "number",
        least: 0,
        means: "Greatest flow that the maker recommends, ‹gal/h|L/h›.",
      },
      {
        key: "minimum_water",
        kind: "number",
        required: true,
        least: 0,
        means: "Depth of water that the pump needs, ‹in|mm›.",
      },
      { key: "outlet_size", kind: "text", means: "Nominal size of the outlet, in." },
      { key: "variable_speed", kind: "yesno", means: "Can the speed be set?" },
      ...points,
      placeholderColumn,
    ],
    rule: curveFault,
  },
  placeLayout,
  machineLayout,
  {
    name: "rates",
    sheet: "Rates",
    means: "Wages, burden, production rates, site factors, hire and overhead.",
    starter: starterRates(rates),
    columns: [
      code,
      description,
      { key: "value", kind: "number", required: true, least: 0, means: "The rate, in its unit." },
      {
        key: "unit",
        kind: "text",
        required: true,
        choices: rateUnits,
        means: "Unit of the rate; production is units per man-hour.",
      },
      { key: "source", kind: "text", means: "Where the rate comes from." },
      placeholderColumn,
    ],
  },
];

/** What is wrong with a pump's curve; undefined where it is a curve that flow can be read from. */
function curveFault(row: BookRow): string | undefined {
  for (let point = 2; point <= curvePoints; point++) {
    const at = (key: string, back = 0) => row[`${key}_${point - back}`];
    const [flow, head, flowBefore, headBefore] = [at("flow"), at("head"), at("flow", 1), at("head", 1)];
    if (flow === undefined && head === undefined) continue;
    if (flow === undefined || head === undefined) {
      return `point ${point} of the curve lacks its flow or its head. Give both, or neither.`;
    }
    if (flowBefore === undefined || headBefore === undefined) {
      return `point ${point} of the curve follows a blank one. Close the gap.`;
    }
    if (flow <= flowBefore) {
      return `flow_${point} is ${flow}, but flow_${point - 1} is ${flowBefore}: the flow must rise from point to point. Put the points in order.`;
    }
    if (head >= headBefore) {
      return `head_${point} is ${head}, but head_${point - 1} is ${headBefore}: the head must fall from point to point. Correct the points.`;
    }
  }
  return undefined;
}
