import { moneyFormulas } from "../../vocabulary/money.js";
import { part } from "../part.js";
import { business, hire } from "../rates.js";
import { priceSense, priceTotals } from "./cost-to-price.js";
import { drawChecks, drawTable } from "./draws.js";
import { equipmentTable } from "./equipment.js";
import { hireDays } from "./hire.js";
import { contractLines, optionTable } from "./options.js";
import { priceBreakdown, priceChart } from "./price-breakdown.js";
import { proposalOfPrice } from "./proposal-lines.js";
import { priceRules } from "./rules.js";
import { outsideInWords, risks, subcontracts } from "./work-by-others.js";

export const price = part("Price", "From cost to price: overhead, contingency, margin, options, draws.", {
  blocks: {
    Price: [
      priceTotals,
      priceRules,
      priceSense,
      priceBreakdown,
      priceChart,
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
  },
  formulas: moneyFormulas,
  rates: [
    hire("machine-day", "Machine, with fuel", "$/day"),
    hire("machine-delivery", "Machine brought and fetched", "$/each"),
    hire("small-machine-day", "Small machine, with fuel", "$/day"),
    hire("small-machine-delivery", "Small machine brought and fetched", "$/each"),
    hire("compactor-day", "Plate compactor", "$/day"),
    hire("site-day", "Toilet, fence, crew truck: a day on site", "$/day"),
    hire("permit", "Permit or plan review", "$/each"),
    business("overhead", "Overhead, of direct cost", "percent"),
  ],
  proposal: proposalOfPrice,
  told: ["options.taken"],
  office: [
    "margin_wanted",
    "contingency_share",
    "risks",
    "risk_confidence",
    "labor_overrun_tested",
    "rounding_step",
    "hire_in_rain",
  ],
});
