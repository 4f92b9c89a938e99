import { calc, check, count, decide, lines, money, office, percent, text } from "../../../engine/template/index.js";
import { rate } from "../../vocabulary/rate.js";

const inPrice = "in our price";

/** What the office decides about a price. */
export const priceRules = lines("Pricing rules", {
  margin_wanted: decide(percent, "Profit margin wanted", { again: true, default: 0.2, least: 0, most: 0.6 }),
  markup_wanted: calc(percent, "MARKUP_FROM_MARGIN(MIN(0.9,MAX(0,margin_wanted)))", "Markup it equals"),
  contingency_share: decide(percent, "Contingency, of direct cost", {
    again: true,
    default: 0.03,
    least: 0,
    most: 0.3,
  }),
  risk_confidence: office(percent, "Confidence in risk allowance", {
    default: 0.8,
    least: 0.5,
    most: 0.99,
    decimals: 0,
  }),
  labor_overrun_tested: office(percent, "Labor overrun tested", {
    default: 0.15,
    least: 0,
    most: 1,
    decimals: 0,
    source: "common practice, no source",
  }),
  rounding_step: office(money, "Price rounding step", {
    note: "The price is rounded up to a multiple of it.",
    default: 50,
    least: 0.01,
    most: 1000,
  }),
  permit_work: decide(text, "Wall permits and engineer", {
    default: inPrice,
    choices: [inPrice, "by the customer"],
    note: "By the customer: the proposal leaves them out in words.",
  }),
  permits_needed: decide(count, "Other permits", {
    default: 0,
    least: 0,
    most: 10,
    whole: true,
  }),
  engineer_designs: calc(
    count,
    `IF(permit_work="${inPrice}",walls_to_permit,0)+digs_engineered`,
    "Engineer's designs",
    { working: true, note: "Each wall that needs one, and each dig whose protection is engineered." },
  ),
  permits_paid: calc(
    count,
    `permits_needed+IF(permit_work="${inPrice}",walls_to_permit,0)+IF(electric_counted,1,0)`,
    "Permits paid for",
    { working: true, note: "Of walls and of the circuit; an electrician's quote holds his own." },
  ),
  pump_tax_class: office(text, "Pump tax class", { default: "taxable" }),
  overhead_share: calc(percent, `${rate("overhead")}/100`, "Overhead, of direct cost"),
  pump_tax_known: check(
    "LISTED(taxes.class,pump_tax_class)",
    'Tax class "{pump_tax_class}" of the pump is not in taxes. Choose one of its classes in pump_tax_class on sheet Office rules.',
    { label: "Pump tax class unknown" },
  ),
});
