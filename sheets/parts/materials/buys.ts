import {
  calc,
  number,
  type TableBlock,
  table,
  text,
  yesno,
} from "../../../engine/template/index.js";
import { countedIn, type TradeUnit, tradeUnit } from "../../tables/trade-units.js";

/** A line to buy: what it is, its item code, the quantity as a number in the unit of the price book. */
export interface Buy {
  readonly what: string;
  /** A formula that yields the item code. */
  readonly code: string;
  /** A formula for the quantity: a length, an area, a weight … as `unit` is one, or a count. */
  readonly wanted: string;
  readonly unit: TradeUnit;
  /** Comes by the truck load, which its price does not hold: for units of ton and yd3. */
  readonly byLoad?: boolean;
}

/** What a sheet asks the office to buy, for the price sheet to take up. */
export function buysTable(name: string, buys: readonly Buy[]): TableBlock {
  const of = (row: number) => buys[row - 1] as Buy;
  return table(
    name,
    "To buy for this sheet, in the units of the price book",
    { rows: buys.length },
    {
      what: calc(text, (row) => `"${of(row).what}"`, "What"),
      code: calc(text, (row) => of(row).code, "Item code"),
      wanted: calc(
        number,
        (row) => countedIn(of(row).wanted, of(row).unit),
        "Needed, before waste and packs",
      ),
      unit: calc(text, (row) => `"${tradeUnit(of(row).unit)}"`, "Unit"),
      by_load: calc(yesno, (row) => (of(row).byLoad ? "TRUE" : "FALSE"), "Comes by the load"),
    },
  );
}
