import {
  type Block,
  calc,
  count,
  date,
  money,
  number,
  type SheetDeclaration,
  sheet,
  table,
  text,
  yesno,
} from "../../../engine/template/index.js";
import { takeoffSheet } from "../materials/sheet.js";
import { priceSheet } from "../price/sheet.js";

/** The capacity of a table of what is bought, from where it is declared. */
function capacity(name: string): number {
  const blocks = [takeoffSheet, priceSheet].flatMap((one) => one.blocks);
  const found = blocks.find((block) => block.kind === "table" && block.name === name);
  if (found?.kind !== "table") throw new Error(`No table ${name} to buy from.`);
  return found.rows;
}

/** The tables of what is bought, with their capacity. */
const sources: readonly { readonly name: string; readonly rows: number; readonly taken?: true }[] =
  [
    { name: "materials", rows: capacity("materials") },
    { name: "additional_items", rows: capacity("additional_items") },
    { name: "options", rows: capacity("options"), taken: true },
  ];

interface Place {
  readonly table: string;
  readonly row: number;
  readonly taken: boolean;
}

const places: readonly (Place | "pump")[] = [
  ...sources.flatMap(({ name, rows, taken }) =>
    Array.from({ length: rows }, (_, i) => ({ table: name, row: i + 1, taken: taken ?? false })),
  ),
  "pump",
];

/** A column of the list, from whichever table the row stands for. */
const from =
  (column: string, ofPump: string) =>
  (row: number): string => {
    const place = places[row - 1] as Place | "pump";
    return place === "pump" ? ofPump : `INDEX(${place.table}.${column},${place.row})`;
  };

const ofPump = (column: string) => `INDEX(pumps.${column},MAX(1,pump_row))`;

function bought(row: number): string {
  const place = places[row - 1] as Place | "pump";
  if (place === "pump") return "IF(LEN(pump_code)>0,1,0)";
  const quantity = `INDEX(${place.table}.order_quantity,${place.row})`;
  return place.taken ? `IF(INDEX(${place.table}.taken,${place.row}),${quantity},0)` : quantity;
}

/** All that could be bought, each with the place that its supplier gives it. */
export const purchaseWorking: Block = table(
  "order_list",
  "Lines for Orders, in the order of the takeoff",
  { rows: places.length },
  {
    what: calc(text, from("description", "pump_description"), "What"),
    code: calc(text, from("code", "pump_code"), "Code"),
    order_quantity: calc(number, bought, "To buy"),
    unit: calc(text, from("unit", '"each"'), "Unit"),
    supplier: calc(text, from("supplier", ofPump("supplier")), "Supplier"),
    cost: calc(money, from("cost", "pump_cost"), "Cost before tax"),
    good_until: calc(date, from("good_until", ofPump("good_until")), "Price good until"),
    place: calc(count, "above.place+1", "Row", { first: "1" }),
    wanted: calc(yesno, "order_quantity>0", "Wanted"),
    rank: calc(
      number,
      "IF(wanted,IF(LEN(supplier)>0,MATCH(supplier,order_list.supplier,0),0)*1000,1000000)+place",
      "Rank: by the first line of its supplier",
      { decimals: 0 },
    ),
    note: calc(
      text,
      'IF(AND(wanted,code=liner_code,what=INDEX(liner_buys.what,1)),TEXTJOIN("; ",TRUE,liner_orders.said),"")',
      "Note",
    ),
    from_row: calc(
      count,
      "MATCH(SMALL(order_list.rank,place),order_list.rank,0)",
      "Row that stands here on Orders",
    ),
  },
);

const picked = (column: string) => `INDEX(order_list.${column},from_row)`;

export const purchaseSheet: SheetDeclaration = sheet(
  "Orders",
  "What to order, by supplier, in whole packs.",
  [
    table(
      "orders",
      "To order",
      {
        rows: places.length,
        beside: "order_list",
        filled: "SMALL(order_list.rank,place)<1000000",
        note: "Waste and whole packs are in the quantities; sales tax is not in the costs.",
      },
      {
        what: calc(text, picked("what"), "What"),
        supplier: calc(text, picked("supplier"), "Supplier"),
        quantity: calc(number, picked("order_quantity"), "To buy"),
        unit: calc(text, picked("unit"), "Unit"),
        cost: calc(money, picked("cost"), "Cost before tax"),
        good_until: calc(date, picked("good_until"), "Price good until"),
        code: calc(text, picked("code"), "Item code"),
        note: calc(text, picked("note"), "Note"),
      },
    ),
  ],
  { handout: true, page: true },
);
