import { unprinted } from "../../../engine/template/index.js";
import { moneyFormulas } from "../../vocabulary/money.js";
import { hired } from "../hire.js";
import { part } from "../part.js";
import { business } from "../rates.js";
import { priceSense, priceTotals } from "./cost-to-price.js";
import { drawChecks, drawTable } from "./draws.js";
import { equipmentTable } from "./equipment.js";
import { hireDays, machineHired } from "./hire.js";
import { markupRules, markupsTotal, markupTable } from "./markups.js";
import { contractLines, customersNumber, optionTable } from "./options.js";
import { ownJobRules, ownJobs } from "./own-jobs.js";
import { priceBreakdown, priceChart } from "./price-breakdown.js";
import { proposalOfPrice } from "./proposal-lines.js";
import { priceRules } from "./rules.js";
import { whatCouldGo } from "./what-could-go.js";
import { outsideChecks, outsideInWords, risks, subcontracts } from "./work-by-others.js";

export const price = part("Price", "From cost to price: overhead, contingency, margin, options, draws.", {
  blocks: {
    Price: [
      priceTotals,
      contractLines,
      priceBreakdown,
      priceSense,
      whatCouldGo,
      // one page: the rules stand on Decisions and with the office, the bars on Summary
      unprinted(priceRules),
      unprinted(markupRules),
      unprinted(markupTable),
      unprinted(markupsTotal),
      unprinted(customersNumber),
      unprinted(ownJobs),
      unprinted(ownJobRules),
      unprinted(priceChart),
      drawTable,
      unprinted(drawChecks),
      equipmentTable,
      hireDays,
      subcontracts,
      risks,
      outsideChecks,
      unprinted(outsideInWords),
      optionTable,
    ],
  },
  formulas: moneyFormulas,
  hires: [
    ...machineHired("machine", "Machine", "machine", 300),
    ...machineHired("small machine", "Small machine", "small-machine"),
    hired("Plate compactor", "compactor_days/1[days]", "compactor-day", "Plate compactor", "$/day"),
    hired(
      "Site kept open, rain days too",
      "days_allowed/1[days]",
      "site-day",
      "Fence, signs, crew truck with fuel: a day",
      "$/day",
    ),
    hired("Permits and reviews", "permits_paid", "permit", "Permit or plan review", "$/each"),
  ],
  rates: [business("overhead", "Overhead, of direct cost", "percent")],
  proposal: proposalOfPrice,
  told: ["options.taken"],
  office: [
    "margin_wanted",
    "customer_number",
    "contingency_share",
    "risks",
    "risk_confidence",
    "labor_overrun_tested",
    "hours_half_over",
    "hours_fifth_over",
    "hours_over_jobs",
    "hours_over_source",
    "rounding_step",
    "hire_in_rain",
  ],
});
