import { chart, sheet } from "../../../engine/template/index.js";
import { priceSense, priceTotals } from "./cost-to-price.js";
import { drawChecks, drawTable } from "./draws.js";
import { equipmentTable } from "./equipment.js";
import { hireDays } from "./hire.js";
import { moneyGoes } from "./money-goes.js";
import { contractLines, optionTable } from "./options.js";
import { priceRules } from "./rules.js";
import { outsideInWords, risks, subcontracts } from "./work-by-others.js";

export const priceSheet = sheet(
  "Price",
  "From cost to a price that holds: overhead, contingency, margin, options, draws.",
  [
    priceTotals,
    priceRules,
    priceSense,
    moneyGoes,
    chart("Where the money goes, part by part", "$", "", [
      { label: "Amount", x: "price_breakdown.part", y: "price_breakdown.amount", marks: "bars" },
    ]),
    contractLines,
    drawTable,
    drawChecks,
    equipmentTable,
    hireDays,
    subcontracts,
    risks,
    outsideInWords,
    optionTable,
  ],
);
