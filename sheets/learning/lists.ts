import {
  calc,
  check,
  date,
  input,
  money,
  number,
  percent,
  precise,
  type TableBlock,
  table,
  text,
  yesno,
} from "../../engine/template/index.js";
import { rateUnits } from "../tables/trade-units.js";
import { methods } from "../tables/work-methods.js";

/** Production rates that one workbook holds. */
const rates = 90;

/** The rates of the office book that jobs are held against. */
export const bookRates: TableBlock = table(
  "book_rates",
  "Rates of the office book",
  { rows: rates, filled: "LEN(code)>0" },
  {
    means: input(text, "Rate"),
    code: input(text, "Code"),
    unit: input(text, "Unit", { choices: rateUnits }),
    book_rate: input(precise, "In the book", { least: 0.000001, decimals: 3 }),
    comparable: check(
      "AND(book_rate>0,LISTED(trade_units.name,unit),COUNT_WHERE(book_rates.code,code)=1)",
      "{means} ({code}): no rate in the book, unit {unit} unknown, or code used twice. Correct book_rates.book_rate, book_rates.unit or book_rates.code.",
      { label: "Rate cannot be compared" },
    ),
  },
);

/** Each rate with each way in which it was worked. */
export const ways: TableBlock = table(
  "ways",
  "Rates and methods",
  { rows: rates, filled: "LEN(code)>0" },
  {
    code: input(text, "Code", { choices: "book_rates.code" }),
    method: input(text, "Method", { choices: [...methods] }),
  },
);

/** Every built job, once. */
export const jobList = (rows: number): TableBlock =>
  table(
    "job_list",
    "Built jobs",
    { rows, filled: "LEN(job)>0" },
    { job: input(text, "Job"), ended: input(date, "Ended") },
  );

/** Every bid that was won or lost. */
export const decidedBids = (rows: number): TableBlock =>
  table(
    "decided",
    "Bids won and lost",
    { rows, filled: "AND(price>0[$],cost>0[$])", note: "Price and cost as bid." },
    {
      bid_job: input(text, "Job", { optional: true }),
      won: input(yesno, "Won", { default: false }),
      price: input(money, "Price"),
      cost: input(money, "Cost"),
      margin: calc(percent, "1-cost/MAX(0.01[$],price)", "Margin"),
      once: check(
        "COUNT_WHERE(decided.bid_job,bid_job)=1",
        "Bid {bid_job} stands in several rows and counts several times. Clear all but one in decided.bid_job on sheet Lists.",
        { label: "Bid listed twice", level: "look" },
      ),
      one: calc(number, "1", "Decided", { working: true, decimals: 0 }),
      one_won: calc(number, "IF(won,1,0)", "Won, counted", { working: true, decimals: 0 }),
    },
  );
