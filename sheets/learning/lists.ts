import { check, date, input, precise, type TableBlock, table, text } from "../../engine/template/index.js";
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
