import { calc, number, type TableBlock, table, text } from "../../../engine/template/index.js";
import { countedIn, tradeUnit } from "../../tables/trade-units.js";
import type { BuysOfSheet } from "../brought.js";
import type { Buy } from "../goods.js";

/** What a sheet asks the office to buy, for the takeoff to take up. */
export function buysTable({ table: name, buys }: Pick<BuysOfSheet, "table" | "buys">): TableBlock {
  const of = (row: number) => buys[row - 1] as Buy;
  return table(
    name,
    "Materials for this sheet",
    { rows: buys.length, working: true },
    {
      what: calc(text, (row) => `"${of(row).what}"`, "What"),
      code: calc(text, (row) => of(row).code, "Item code"),
      wanted: calc(number, (row) => countedIn(of(row).wanted, of(row).unit), "Needed before waste"),
      unit: calc(text, (row) => `"${tradeUnit(of(row).unit)}"`, "Unit"),
    },
  );
}
