import { calc, chart, money, percent, table, text } from "../../../engine/template/index.js";

const parts: readonly [string, string][] = [
  ["material", "material_cost"],
  ["labor", "labor_in_price"],
  ["equipment", "equipment_cost"],
  ["work by others", "subcontract_cost"],
  ["overhead", "overhead_cost"],
  ["contingency", "contingency_cost"],
  ["profit", "profit"],
];

/** The parts of the price, for the eye and for a chart. */
export const priceBreakdown = table(
  "price_breakdown",
  "Price breakdown",
  { rows: parts.length },
  {
    part: calc(text, (row) => `"${parts[row - 1]?.[0]}"`, "Part"),
    // no chart of a job that is not yet described: what stands ready in every job costs something
    amount: calc(money, (row) => `IF(described,${parts[row - 1]?.[1] ?? "0"},0)`, "Amount", { decimals: 0 }),
    of_price: calc(percent, "IF(price>0,amount/price,0)", "Of the price"),
  },
);

export const priceChart = chart(
  "Where the money goes",
  "Amount, $",
  "",
  [{ label: "Amount", x: "price_breakdown.part", y: "price_breakdown.amount", marks: "bars", says: true }],
  {
    alt: "A bar for each part of the price: material, labor, equipment, work by others, overhead, contingency, profit.",
    lines: 13,
    // each bar says its figure
    without: ["up"],
    summary: true,
  },
);
