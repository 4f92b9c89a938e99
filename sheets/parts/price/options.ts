import {
  calc,
  check,
  count,
  decide,
  hours,
  lines,
  money,
  number,
  office,
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
    other_cost: decide(money, "Other cost", {
      optional: true,
      least: 0,
      most: 1e6,
      note: "0 says that the option costs nothing more. With nothing at all given, the Proposal leaves it out.",
    }),
    taken: decide(yesno, "Taken by customer", { default: false }),
    option_cost: calc(
      money,
      "ROUND((cost+tax+extra_hours*crew_rate+other_cost)*(1+overhead_share+contingency_share),2)",
      "Cost with overhead and contingency",
    ),
    option_markups: calc(
      money,
      "(cost+tax)*INDEX(markups.more,1)+extra_hours*crew_rate*INDEX(markups.more,2)+other_cost*INDEX(markups.more,4)",
      "Markups by kind, before overhead",
    ),
    option_exact: calc(
      money,
      "PRICE_AT_MARGIN(option_cost,MIN(0.9,MAX(0,margin_wanted)))+option_markups*(1+overhead_share+contingency_share)",
      "Price before rounding",
    ),
    option_price: calc(money, "CEILING(ROUND(option_exact,2),MAX(rounding_step,0.01[$]))", "Price of the option", {
      strong: true,
    }),
    costed: check(
      "OR(option_exact>0,needed>0,NOT(ISBLANK(other_cost)))",
      "{description}: no cost is given, so the Proposal leaves it out. Enter other_cost in options on sheet Decisions, 0 where it costs nothing.",
      { label: "Option without a cost" },
    ),
    offered: calc(yesno, "OR(option_price>0,AND(priced,NOT(ISBLANK(other_cost))))", "On the Proposal", {
      working: true,
      note: "An option without a price is not offered for nothing; one whose other cost is 0 is.",
    }),
    price_said: calc(text, "~{option_price|2}", "Price in words", { working: true, reader: "customer" }),
    comes_out: calc(
      money,
      (row) => `IF(AND(taken,option_price>0),option_price+${row}*0.000001[$],0)`,
      "Saved if it comes out",
      {
        working: true,
        note: "With a millionth of a dollar by row, so that equal ones have an order.",
      },
    ),
  },
);

export const contractLines = lines("The contract", {
  options_taken: calc(money, "SUMPRODUCT(options.taken*options.option_price)", "Options taken", {
    decimals: 0,
    zero: "none",
  }),
  discount: decide(money, "Discount", { section: "Price", default: 0, least: 0, most: 1e6 }),
  contract_price: calc(money, "price+options_taken-discount", "Contract price", { strong: true }),
  contract_cost: calc(money, "total_cost+SUMPRODUCT(options.taken*options.option_cost)", "Contract cost"),
  contract_margin: calc(percent, "IF(contract_price>0,1-contract_cost/contract_price,0)", "Contract margin"),
  least_margin: office(percent, "Least margin", {
    section: "Price",
    default: 0.1,
    least: 0,
    most: 0.6,
    source: "office rule",
  }),
  margin_held: check(
    "OR(NOT(described),ROUND(contract_margin-least_margin,6)>=0)",
    "The contract leaves {contract_margin} of margin, under the least, {least_margin}. Lower discount or raise margin_wanted on sheet Decisions.",
    { label: "Margin below minimum" },
  ),
  last_draw: calc(count, "MAX(draws.place)", "Number of draws", { working: true }),
});

/** What it would leave if the customer paid a number of their own. */
export const customersNumber = lines("Customer's number", {
  customer_number: decide(money, "Customer's number", {
    section: "Price",
    optional: true,
    least: 1,
    most: 1e7,
    note: "What the customer would pay: the figures beside it tell what it leaves. The price stays.",
  }),
  number_margin: calc(
    percent,
    "IF(customer_number>0,1-contract_cost/customer_number,0)",
    "Margin at customer's number",
    {
      zero: "none",
    },
  ),
  number_markup: calc(
    percent,
    "IF(customer_number>0,customer_number/contract_cost-1,0)",
    "Markup at customer's number",
    {
      zero: "none",
    },
  ),
  number_gap: calc(money, "IF(customer_number>0,contract_price-customer_number,0)", "Price over customer's number", {
    zero: "none",
  }),
});
