import { calc, count, money, percent, table, text } from "../../../engine/template/index.js";
import { optionTable } from "./options.js";

const ofOption = (column: string) => `INDEX(options.${column},MAX(1,from_row))`;

/** How to come down to the customer's number: the options taken, dearest first, one after the other. */
export const whatCouldGo = table(
  "what_could_go",
  "What could come out",
  {
    rows: optionTable.rows,
    shown: "from_row>0",
    note: "Options taken, dearest first, each with all before it. Typed beside it, the customer's number tells what margin it leaves then.",
  },
  {
    from_row: calc(
      count,
      (row) =>
        `IF(LARGE(options.comes_out,${row})>0,PLACE_OR_ZERO(options.comes_out,LARGE(options.comes_out,${row})),0)`,
      "Row of the option",
      { working: true },
    ),
    option: calc(text, `IF(from_row>0,${ofOption("description")}&"","")`, "Option"),
    saved: calc(money, `IF(from_row>0,${ofOption("option_price")},0)`, "Saved"),
    price_left: calc(money, "above.price_left-saved", "Contract price then", { first: "contract_price-saved" }),
    cost_left: calc(money, `above.cost_left-IF(from_row>0,${ofOption("option_cost")},0)`, "Contract cost then", {
      first: `contract_cost-IF(from_row>0,${ofOption("option_cost")},0)`,
    }),
    margin_left: calc(
      percent,
      "IF(AND(from_row>0,customer_number>0),1-cost_left/customer_number,0)",
      "Margin at the number then",
    ),
  },
);
