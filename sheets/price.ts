import { chart, sheet } from "../engine/template/index.js";
import { priceSense, priceTotals } from "./price/cost-to-price.js";
import { drawChecks, drawTable } from "./price/draws.js";
import { equipmentTable } from "./price/equipment.js";
import { hireDays } from "./price/hire.js";
import { moneyGoes } from "./price/money-goes.js";
import { contractLines, optionTable } from "./price/options.js";
import { priceRules } from "./price/rules.js";
import { outsideInWords, risks, subcontracts } from "./price/work-by-others.js";

export const priceSheet = sheet(
  "Price",
  "From cost to a price that holds: overhead, contingency, margin, options, draws.",
  [
    priceTotals,
    priceRules,
    priceSense,
    moneyGoes,
    chart("Where the money goes, part by part", "$", "", [
      { label: "Amount", x: "money_goes.part", y: "money_goes.amount", marks: "bars" },
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
