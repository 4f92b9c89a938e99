import {
  calc,
  count,
  number,
  office,
  percent,
  published,
  type TableBlock,
  table,
  text,
  yesno,
} from "../../../engine/template/index.js";
import { countedIn, type TradeUnit, tradeUnit } from "../../tables/trade-units.js";
import { itemCode } from "../../vocabulary/item-code.js";
import type { BuysOfSheet, Whole } from "../brought.js";
import type { UsualLine } from "../goods.js";
import { pricedColumns, wholeLoads } from "./priced.js";

interface Line {
  /** What it is called in the office book. */
  readonly name: string;
  readonly description: string;
  readonly code: string;
  readonly needed: string;
  readonly unit: string;
  readonly item?: string;
  readonly waste: number;
  readonly by_load: boolean;
  readonly carried: TradeUnit;
}

/**
 * Materials: a line for each thing to buy, from the "to buy" tables of other sheets and
 * from lines of its own.
 */
export function materialLines({ buys, takeoff }: Pick<Whole, "buys" | "takeoff">): TableBlock {
  const all = [...buys.flatMap(linesOf), ...takeoff.map(usualLine)];
  const of = (row: number): Line => all[row - 1] as Line;
  return table(
    "materials",
    "Materials",
    {
      shown: "needed>0",
      rows: all.length,
      rowNames: all.map(({ name }) => name),
      data: all.map(({ item, waste, by_load }) => ({ ...(item !== undefined && { item }), waste, by_load })),
      note: "Order quantity: needed, with the waste of sheet Office rules, up to whole packs of sheet Items. Cost and tax are rounded line by line. A code in Item, on sheet Office rules, takes the place of the usual one.",
    },
    pricedColumns({
      description: calc(text, (row) => of(row).description, "What"),
      item: itemCode("Item", { optional: true }),
      code: calc(text, (row) => of(row).code, "Code", { working: true }),
      needed: calc(number, (row) => of(row).needed, "Needed"),
      unit: calc(text, (row) => of(row).unit, "Unit"),
      waste: office(percent, "Waste", { least: 0, most: 1, decimals: 0 }),
      delivered: office(yesno, "Delivered price", { default: false }),
      by_load: published(yesno, "Bulk, comes by load", {
        working: true,
        source: "the list of materials of this template",
      }),
    }),
  );
}

/** Whole loads of each line that comes by the truck load, where it shares no truck. */
export function bulkLines({ buys, takeoff }: Pick<Whole, "buys" | "takeoff">): TableBlock {
  const all = [...buys.flatMap(linesOf), ...takeoff.map(usualLine)];
  const bulk = all.flatMap(({ name, by_load, carried }, i) => (by_load ? [{ name, carried, row: i + 1 }] : []));
  return table(
    "bulk_lines",
    "Bulk lines, each by itself",
    { working: true, rows: bulk.length, data: bulk.map(({ name }) => ({ line: name })) },
    {
      line: published(text, "Line", { source: "the list of materials of this template" }),
      loads: calc(
        count,
        (at) => {
          const { row, carried } = bulk[at - 1] as (typeof bulk)[number];
          const ordered = `INDEX(materials.order_quantity,${row})`;
          return `IF(INDEX(materials.delivered,${row}),0,${wholeLoads(carried === "ton" ? "ton" : "yd³", ordered)})`;
        },
        "Truck loads if alone",
      ),
    },
  );
}

function linesOf({ sheet, table: name, buys }: BuysOfSheet): Line[] {
  return buys.map(({ what, named = `${name}.what`, unit: carried, waste = 0, byLoad = false }, i) => ({
    name: `${sheet}: ${what}`,
    // joined to "", since a blank cell looked up is a zero
    description: `INDEX(${named},${i + 1})&""`,
    code: `IF(LEN(item)>0,item,INDEX(${name}.code,${i + 1}))`,
    needed: `INDEX(${name}.wanted,${i + 1})`,
    unit: `INDEX(${name}.unit,${i + 1})`,
    waste,
    by_load: byLoad,
    carried,
  }));
}

function usualLine({ what, code, wanted, unit, waste = 0 }: UsualLine): Line {
  return {
    name: what,
    description: `"${what}"`,
    code: 'IF(LEN(item)>0,item,"")',
    needed: countedIn(wanted, unit),
    unit: `"${tradeUnit(unit)}"`,
    item: code,
    waste,
    by_load: false,
    carried: unit,
  };
}
