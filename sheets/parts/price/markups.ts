import { calc, lines, money, office, percent, published, table, text } from "../../../engine/template/index.js";

const own = (label: string) =>
  office(percent, label, {
    section: "Price",
    optional: true,
    least: 0,
    most: 3,
    note: "Profit on cost with its overhead and contingency; blank: the one markup of the profit margin wanted.",
  });

/** Where an office adds more to one kind of cost than to another. */
export const markupRules = lines("Markup rules", {
  material_markup: own("Markup on materials"),
  labor_markup: own("Markup on labor"),
  equipment_markup: own("Markup on equipment"),
  others_markup: own("Markup on others' work"),
});

const kinds = [
  { kind: "materials", cost: "material_cost", rule: "material_markup" },
  { kind: "labor", cost: "labor_in_price", rule: "labor_markup" },
  { kind: "equipment", cost: "equipment_cost", rule: "equipment_markup" },
  { kind: "work by others", cost: "subcontract_cost", rule: "others_markup" },
] as const;

const of = (row: number) => kinds[row - 1] as (typeof kinds)[number];

/** The markup of each kind of cost, and what it adds to a price at the one markup. */
export const markupTable = table(
  "markups",
  "Markups by kind of cost",
  { rows: kinds.length, data: kinds.map(({ kind }) => ({ kind })) },
  {
    kind: published(text, "Kind of cost", { source: "the kinds of direct cost of this template" }),
    markup: calc(percent, (row) => `IF(ISBLANK(${of(row).rule}),markup_wanted,${of(row).rule})`, "Markup"),
    more: calc(percent, "markup-markup_wanted", "Over markup wanted"),
    added: calc(
      money,
      (row) => `IF(direct_cost>0,${of(row).cost}*more*total_cost/direct_cost,0)`,
      "Added to the price",
      { decimals: 0 },
    ),
  },
);

export const markupsTotal = lines("Total of markups", {
  markups_added: calc(money, "SUM(markups.added)", "Added by markups of kinds", { decimals: 0 }),
});
