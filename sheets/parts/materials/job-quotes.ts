import { calc, check, count, date, decide, money, table, text } from "../../../engine/template/index.js";
import { capacity } from "../capacity.js";

const bought = ["materials", "additional_items", "options"].map((one) => `LISTED(${one}.code,code)`).join(",");

/** What a supplier quoted for this job alone: it takes the place of the office book's price, which stays as it is. */
export const jobQuotes = table(
  "job_quotes",
  "Quotes for this job",
  {
    section: "Quotes for this job",
    rows: capacity.jobQuotes,
    filled: "AND(LEN(code)>0,cost>0)",
    note: "A price that holds for this job only, by the item's code or the pump's. The office book stays as it is.",
  },
  {
    code: decide(text, "Item code"),
    supplier: decide(text, "Quoted by", { again: true }),
    cost: decide(money, "Cost of one unit", { again: true, least: 0.01, most: 1e6 }),
    good_until: decide(date, "Good until", { again: true }),
    unit: calc(text, 'IF(code=pump_code,"each",PICK_OR(items.unit,items.code,code,"")&"")', "Unit"),
    book_cost: calc(
      money,
      "IF(code=pump_code,pump_price,PICK_OR(items.cost,items.code,code,0[$]))",
      "In the office book",
    ),
    replaces: calc(
      count,
      "IF(PICK_OR(items.bought,items.code,code,0)>0,IF(PICK_OR(items.placeholder,items.code,code,FALSE),1,0),0)",
      "Placeholder price replaced",
      { working: true },
    ),
    quote_used: check(
      `AND(OR(code=pump_code,${bought}),COUNT_WHERE(job_quotes.code,code)=1)`,
      "Quote for {code}: nothing of this bid is bought by that code, or two quotes name it. Correct job_quotes on sheet Decisions.",
      { label: "Quote without an item" },
    ),
  },
);

/** A price, supplier or date: the job's own quote of the code, else what the office book says. */
export const quotedOr = (column: string, code: string, otherwise: string): string =>
  `PICK_OR(job_quotes.${column},job_quotes.code,${code},${otherwise})`;
