import {
  calc,
  count,
  date,
  money,
  number,
  type TableBlock,
  table,
  text,
  yesno,
} from "../../../engine/template/index.js";
import type { Whole } from "../brought.js";
import { quotedOr } from "../materials/job-quotes.js";
import { materialLines } from "../materials/lines.js";
import { extraLines } from "../materials/tables.js";
import { optionTable } from "../price/options.js";

/** Where a line of the list comes from: a row of a table of what is bought, or the pump. */
type Place = { readonly table: string; readonly row: number; readonly taken: boolean } | "pump";

const placesIn = ({ name, rows }: TableBlock, taken = false): Place[] =>
  Array.from({ length: rows }, (_, i) => ({ table: name, row: i + 1, taken }));

const ofPump = (column: string) => `INDEX(pumps.${column},MAX(1,pump_row))`;

function boughtAt(place: Place): string {
  if (place === "pump") return "IF(LEN(pump_code)>0,1,0)";
  const quantity = `INDEX(${place.table}.order_quantity,${place.row})`;
  return place.taken ? `IF(INDEX(${place.table}.taken,${place.row}),${quantity},0)` : quantity;
}

/** All that could be bought, each with the place that its supplier gives it. */
export function purchaseList(all: Pick<Whole, "buys" | "takeoff">): TableBlock {
  const places: readonly Place[] = [
    ...placesIn(materialLines(all)),
    ...placesIn(extraLines),
    ...placesIn(optionTable, true),
    "pump",
  ];
  const at = (row: number) => places[row - 1] as Place;
  /** A column, from whichever table the row stands for. */
  const from = (column: string, ofThePump: string) => (row: number) => {
    const place = at(row);
    return place === "pump" ? ofThePump : `INDEX(${place.table}.${column},${place.row})`;
  };
  return table(
    "order_list",
    "Lines for Orders",
    { rows: places.length },
    {
      what: calc(text, from("description", "pump_description"), "What"),
      code: calc(text, from("code", "pump_code"), "Code"),
      order_quantity: calc(number, (row) => boughtAt(at(row)), "Order quantity"),
      unit: calc(text, from("unit", '"each"'), "Unit"),
      supplier: calc(
        text,
        from("supplier", `IF(pump_row>0,${quotedOr("supplier", "pump_code", ofPump("supplier"))},"")`),
        "Supplier",
      ),
      cost: calc(money, from("cost", "pump_cost"), "Cost before tax"),
      good_until: calc(date, from("good_until", "pump_good_until"), "Good until"),
      place: calc(count, "above.place+1", "Row", { first: "1" }),
      wanted: calc(yesno, "order_quantity>0", "Wanted"),
      rank: calc(
        number,
        "IF(wanted,IF(LEN(supplier)>0,PLACE_OR_ZERO(order_list.supplier,supplier),0)*1000,1000000)+place",
        "Rank by supplier",
        { decimals: 0 },
      ),
      note: calc(
        text,
        'IF(AND(wanted,code=liner_code,what=INDEX(liner_buys.what,1)),TEXTJOIN("; ",TRUE,liner_orders.said),"")',
        "Note",
      ),
      from_row: calc(count, "PLACE_OR_ZERO(order_list.rank,SMALL(order_list.rank,place))", "Row shown on Orders"),
    },
  );
}
