import { calc, money, number, published, type TableBlock, table, text } from "../../../engine/template/index.js";
import { countedIn, type TradeUnit, tradeUnit } from "../../tables/trade-units.js";
import type { Whole } from "../brought.js";
import type { Hire } from "../hire.js";

const source = "the list of hire of this template";

/** What the rate counts in: the day of `$/day`. */
const unitOf = ({ rate }: Hire): TradeUnit => rate.unit.split("/")[1] as TradeUnit;

/** Machines, trucks and the site itself, at the rates of the office book. */
export const equipmentTable = ({ hires }: Pick<Whole, "hires">): TableBlock => {
  const of = (row: number): Hire => hires[row - 1] as Hire;
  return table(
    "equipment",
    "Equipment, hauling and site",
    {
      shown: "quantity>0",
      rows: hires.length,
      data: hires.map((one) => ({ what: one.what, unit: tradeUnit(unitOf(one)), rate_code: one.rate.code })),
      note: "A machine is on hire on its days of work, and on its part of the days lost where hire goes on in rain (sheet Office rules).",
    },
    {
      what: published(text, "What", { source }),
      quantity: calc(number, (row) => countedIn(of(row).quantity, unitOf(of(row))), "Quantity"),
      unit: published(text, "Unit", { source }),
      rate_code: published(text, "Rate", { working: true, source }),
      rate: calc(money, "PICK(used_rates.value,used_rates.code,rate_code)*1[$]", "Cost of one", { decimals: 2 }),
      cost: calc(money, "ROUND(quantity*rate,2)", "Cost", { decimals: 2 }),
    },
  );
};
