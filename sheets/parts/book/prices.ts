import {
  type Block,
  book,
  calc,
  check,
  count,
  date,
  lines,
  money,
  number,
  precise,
  published,
  table,
  text,
  yesno,
} from "../../../engine/template/index.js";
import { tradeUnits } from "../../tables/trade-units.js";
import type { Whole } from "../brought.js";
import { capacity } from "../capacity.js";
import { type Rate, rateUnit } from "../rates.js";

const ownList = "the list of rates that this template reads";

const ordered = (table: string) => `SUM_WHERE(${table}.order_quantity,${table}.code,code)`;
const bought = `${ordered("materials")}+${ordered("additional_items")}`;

/** What of a bid's prices still stands in for the office's own. */
const placeholders = lines("Placeholder prices", {
  pump_placeholder: calc(
    yesno,
    "IF(AND(pump_row>0,NOT(LISTED(job_quotes.code,pump_code))),IF(INDEX(pumps.placeholder,MAX(pump_row,1)),TRUE,FALSE),FALSE)",
    "Pump price is a placeholder",
  ),
  machine_placeholder: calc(
    yesno,
    "IF(AND(machine_row>0,NOT(by_hand)),IF(INDEX(machines.placeholder,MAX(machine_row,1)),TRUE,FALSE),FALSE)",
    "Machine is a placeholder",
  ),
  equipment_placeholders: calc(
    count,
    "IF(pump_placeholder,1,0)+IF(machine_placeholder,1,0)",
    "Pump, machine: placeholders",
  ),
  placeholders_used: calc(
    count,
    "SUMPRODUCT(items.placeholder*(items.bought>0))-SUM(job_quotes.replaces)+SUMPRODUCT(rates.placeholder*1)+equipment_placeholders",
    "Placeholder prices used",
    { note: "Items bought, rates, pump and machine that the office book marks as placeholders." },
  ),
  prices_own: check(
    "placeholders_used=0",
    "Placeholder prices and rates: {placeholders_used|0}. Put the office's own into its book and clear Placeholder: rillbook office check <book> --for <job> names each.",
    { label: "Placeholder prices used" },
  ),
});

const askedBy = (column: string) => `SUM_WHERE(tasks.quantity,tasks.${column},code)`;

/**
 * When a rate that comes to nothing does no harm: one of tasks alone, where none of them is done. So an office book
 * of before a new part serves every job without that part.
 */
function missingHarmless({ code, group }: Rate, read: readonly string[]): string {
  // a figure of the book that comes to nothing is in a unit of another kind
  if (group !== "production") return "PICK_OR(rates.value,rates.code,code,1)=0";
  return read.includes(code) ? "FALSE" : `${askedBy("machine_code")}+${askedBy("hand_code")}<=0`;
}

/**
 * What the bid takes from the office book: the rows used, copied, and checked here. Items
 * are those that inputs made by `itemCode` name.
 */
export const pricesBlocks = ({ rates, ratesRead }: Pick<Whole, "rates" | "ratesRead">): readonly Block[] => [
  table(
    "items",
    "Items used",
    {
      rows: capacity.items,
      from: "items",
      filled: "LEN(code)>0",
    },
    {
      description: book(text, "Item"),
      code: book(text, "Code"),
      unit: book(text, "Unit"),
      pack: book(number, "Pack size"),
      cost: book(money, "Cost of one unit"),
      supplier: book(text, "Supplier"),
      quoted_on: book(date, "Quoted on"),
      good_until: book(date, "Good until"),
      tax_class: book(text, "Tax class"),
      placeholder: book(yesno, "Placeholder"),
      bought: calc(number, bought, "Order quantity", { working: true }),
      sound: check(
        "AND(COUNT_WHERE(items.code,code)=1,LISTED(taxes.class,tax_class),cost>0)",
        'Item {code}, {cost}, tax class "{tax_class}": code used twice, no cost, or class missing from taxes on sheet Office rules. Correct the office book.',
        { label: "Item faulty" },
      ),
    },
  ),
  table(
    "rates",
    "Rates used",
    { rows: capacity.rates, from: "rates", usedBy: ["used_rates.code"], filled: "LEN(code)>0" },
    {
      description: book(text, "Rate"),
      code: book(text, "Code"),
      value: book(precise, "Value", { decimals: 3 }),
      unit: book(text, "Unit"),
      source: book(text, "Source"),
      placeholder: book(yesno, "Placeholder"),
    },
  ),
  table(
    "used_rates",
    "Rates in use",
    {
      rows: rates.length,
      data: rates.map(({ code, means, group, unit }) => ({
        code,
        means,
        unit: rateUnit(unit),
        group,
      })),
    },
    {
      means: published(text, "What it is", { source: ownList }),
      code: published(text, "Code", { source: ownList }),
      group: published(text, "Group", { source: ownList }),
      unit: published(text, "Unit needed", { source: ownList }),
      value: calc(
        precise,
        "RATE_IN(rates.value,rates.unit,rates.code,code,trade_units.kind,trade_units.size,trade_units.name,unit)",
        "Value",
        {
          decimals: 3,
          note: "In the unit needed, whichever the book has it in.",
        },
      ),
      sound: check(
        (row) => `IF(value>0,TRUE,${missingHarmless(rates[row - 1] as Rate, ratesRead)})`,
        "Rate {code} ({means}, {unit}) is missing, zero, or in a unit that measures something else. Correct sheet Rates of the office book.",
        { label: "Rate missing or wrong" },
      ),
    },
  ),
  placeholders,
  tradeUnits,
];
