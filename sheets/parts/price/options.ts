import {
  calc,
  count,
  decide,
  hours,
  lines,
  money,
  number,
  percent,
  table,
  text,
  yesno,
} from "../../../engine/template/index.js";
import { unitChoices } from "../../tables/trade-units.js";
import { itemCode } from "../../vocabulary/item-code.js";
import { capacity } from "../capacity.js";
import { pricedColumns } from "../materials/priced.js";

/** Choices that the customer may add, each with a price of its own. */
export const optionTable = table(
  "options",
  "Options",
  { section: "Options", rows: capacity.options, filled: "LEN(description)>0" },
  {
    ...pricedColumns({
      description: decide(text, "Option"),
      code: itemCode("Code", { asked: "decision", optional: true }),
      needed: decide(number, "Quantity", { again: true, default: 0, least: 0, most: 1e6 }),
      unit: decide(text, "Unit", { again: true, default: "each", choices: unitChoices }),
      waste: decide(percent, "Waste", { default: 0, least: 0, most: 1, decimals: 0 }),
    }),
    extra_hours: decide(hours, "Man-hours", { default: 0, least: 0, most: 1000 }),
    other_cost: decide(money, "Other cost", { default: 0, least: 0, most: 1e6 }),
    taken: decide(yesno, "Taken by customer", { default: false }),
    option_cost: calc(
      money,
      "ROUND((cost+tax+extra_hours*crew_rate+other_cost)*(1+overhead_share+contingency_share),2)",
      "Cost with overhead and contingency",
    ),
    option_price: calc(
      money,
      "CEILING(ROUND(PRICE_AT_MARGIN(option_cost,MIN(0.9,MAX(0,margin_wanted))),2),MAX(rounding_step,0.01[$]))",
      "Price of the option",
    ),
  },
);

export const contractLines = lines("The contract", {
  options_taken: calc(money, "SUMPRODUCT(options.taken*options.option_price)", "Options taken"),
  contract_price: calc(money, "price+options_taken", "Price with options taken", {
    strong: true,
  }),
  last_draw: calc(count, "MAX(draws.place)", "Number of draws"),
});
