import { calc, check, hours, lines, money, percent } from "../../../engine/template/index.js";
import type { Whole } from "../brought.js";
import { quotedOr } from "../materials/job-quotes.js";

/** Sums of the price are read without cents; a unit price keeps them. */
const whole = { decimals: 0 } as const;

const step = "MAX(rounding_step,0.01[$])";

/** From cost to price. */
export const priceTotals = lines("The price", {
  material_cost: calc(money, "materials_before_tax+materials_tax+pump_cost+pump_tax", "Materials, pump and tax"),
  pump_cost: calc(money, `IF(pump_row>0,${quotedOr("cost", "pump_code", "pump_price")},0)`, "— of which pump", whole),
  pump_tax: calc(
    money,
    "IF(AND(pump_cost>0,LEN(pump_tax_class)>0),ROUND(pump_cost*PICK(taxes.share,taxes.class,pump_tax_class),2),0)",
    "— of which pump's tax",
    whole,
  ),
  labor_in_price: calc(money, "labor_cost", "Labor, with burden"),
  equipment_cost: calc(money, "SUM(equipment.cost)", "Equipment, hauling and site", whole),
  subcontract_cost: calc(money, "SUM(subcontracts.amount)+electrician_cost", "Work by others", whole),
  direct_cost: calc(money, "material_cost+labor_in_price+equipment_cost+subcontract_cost", "Direct cost", {
    strong: true,
  }),
  overhead_cost: calc(money, "ROUND(direct_cost*overhead_share,2)", "Overhead", whole),
  risk_allowance: calc(
    money,
    "ROUND(SUM(risks.mean)+NORM.S.INV(MIN(0.99,MAX(0.5,risk_confidence)))*SQRT(SUMPRODUCT(risks.deviation*risks.deviation)),2)",
    "Risk allowance",
    {
      note: "Of the risks listed, taken as independent: their means add, and so do squares of deviations.",
      zero: "none",
      ...whole,
    },
  ),
  contingency_cost: calc(
    money,
    "ROUND(direct_cost*contingency_share,2)+risk_allowance",
    "Contingency and risk allowance",
    whole,
  ),
  total_cost: calc(money, "direct_cost+overhead_cost+contingency_cost", "Total cost", {
    strong: true,
  }),
  price_exact: calc(
    money,
    "IF(described,PRICE_AT_MARGIN(total_cost,MIN(0.9,MAX(0,margin_wanted)))+markups_added,0)",
    "Price before rounding",
  ),
  price: calc(money, `CEILING(ROUND(price_exact,2),${step})`, "Price", { strong: true, zero: "none yet" }),
  profit: calc(money, "IF(described,price-total_cost,0)", "Profit", whole),
  margin: calc(percent, "IF(price>0,profit/price,0)", "Profit margin"),
  markup: calc(percent, "IF(total_cost>0,profit/total_cost,0)", "Markup"),
  pump_quote_holds: check(
    "OR(pump_row=0,pump_good_until>=bid_date)",
    "The price of pump {pump_code} ended before {bid_date}. Ask for a new quote, and enter it on sheet Pumps of the office book.",
    { label: "Pump price expired" },
  ),
  pump_priced: check(
    "pump_cost>0",
    'Pump "{pump_code}" is not in the office book, or costs nothing there. Choose a pump of the book in pump_choice on sheet Decisions.',
    { label: "Pump without a price" },
  ),
});

/** Figures to judge the price by. */
export const priceSense = ({ cellsAt }: Pick<Whole, "cellsAt">) =>
  lines("Price check", {
    ...cellsAt("price check"),
    break_even_price: calc(money, "IF(described,total_cost-contingency_cost,0)", "Break-even price", {
      note: "The least price without a loss, if nothing goes wrong.",
    }),
    cushion: calc(money, "price-break_even_price", "Cushion before a loss", { working: true }),
    cushion_man_hours: calc(
      hours,
      "IF(labor_cost*paid_man_hours>0,cushion/((labor_cost/paid_man_hours)*(1+overhead_share)),0)",
      "Cushion in man-hours",
      { note: "Man-hours over the plan that the price bears before the job loses money." },
    ),
    cushion_share: calc(
      percent,
      "IF(paid_man_hours>0,cushion_man_hours/paid_man_hours,0)",
      "Cushion, of man-hours paid",
      { working: true },
    ),
    labor_overrun_covered: check(
      "OR(man_hours<=0,NOT(described),cushion_share>=labor_overrun_tested)",
      "The job loses money once labor overruns by {cushion_share}, but must stand {labor_overrun_tested}. Raise margin_wanted or contingency_share on sheet Decisions.",
      { label: "Loss at the labor overrun", level: "look" },
    ),
  });
