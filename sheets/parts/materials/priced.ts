import {
  type CellDeclaration,
  calc,
  check,
  count,
  date,
  type InputDeclaration,
  money,
  number,
  precise,
  text,
} from "../../../engine/template/index.js";

import { unitsIn } from "../../tables/trade-units.js";
import { quotedOr } from "./job-quotes.js";

/** The row of the items that has exactly this code: a look-up alone would take * and ? as wildcards. */
const exactRow = 'IF(LEN(code)>0,IF(PICK_OR(items.code,items.code,code,"")=code,PLACE_OR_ZERO(items.code,code),0),0)';

/** What the office book says of the item, unless a quote for this job names it. */
const quoted = (column: string): string => quotedOr(column, "code", `INDEX(items.${column},MAX(at,1))`);

/** What is wrong with a line's price, whichever it is. */
const fault =
  '{IF(at=0,"not in the office book",IF(book_share=0,"sold by "&INDEX(items.unit,MAX(at,1))&", not by "&unit,"its price ended before the bid date"))}';

/** The columns that a line of materials has before it is priced. */
export interface LineColumns {
  readonly description: CellDeclaration;
  /** An item chosen by a person, where the code is a calculation. */
  readonly item?: InputDeclaration;
  readonly code: CellDeclaration;
  /** A plain number in `unit`. */
  readonly needed: CellDeclaration;
  readonly unit: CellDeclaration;
  readonly waste: CellDeclaration;
  /** A person says that its price holds the delivery. */
  readonly delivered?: InputDeclaration;
  /** Comes by the truck load, and its price does not hold the delivery; where left out, nothing does. */
  readonly by_load?: CellDeclaration;
  /** Whole loads of a line that shares no truck. */
  readonly loads?: CellDeclaration;
}

/**
 * The columns of a table of materials: what is needed, what is bought in whole packs, what it
 * costs by exact code, and the checks that keep a missing, outdated or misread price from
 * becoming a silent zero.
 */
export function pricedColumns(line: LineColumns): Record<string, CellDeclaration> {
  return {
    ...line,
    at: calc(count, exactRow, "Row in the office book", { working: true }),
    book_share: calc(precise, `IF(at>0,${unitsIn("unit", "INDEX(items.unit,MAX(at,1))")},0)`, "Units per book unit", {
      working: true,
      note: "1 where the book sells by the bid's own unit, 0 where by another measure.",
    }),
    order_quantity: calc(
      number,
      `IF(needed>0,BUY_IN_PACKS(needed*(1+waste),IF(book_share>0,MAX(${packOf},0.001)*book_share,1)),0)`,
      "Order quantity",
    ),
    unit_cost: calc(money, `IF(book_share>0,${quoted("cost")}/book_share,0)`, "Unit cost", { decimals: 2 }),
    cost: calc(money, "ROUND(order_quantity*unit_cost,2)", "Cost", { strong: true, decimals: 2 }),
    tax: calc(
      money,
      "IF(cost>0,ROUND(cost*PICK(taxes.share,taxes.class,INDEX(items.tax_class,MAX(at,1))),2),0)",
      "Sales tax",
      { working: true },
    ),
    supplier: calc(text, `IF(at>0,${quoted("supplier")},"")`, "Supplier"),
    good_until: calc(date, `IF(at>0,${quoted("good_until")},0)`, "Good until"),
    priced: check(
      "IF(needed<=0,TRUE,AND(book_share>0,good_until>=bid_date))",
      `{description}, code "{code}": ${fault}. Correct sheet Items of the office book, or ask for a quote.`,
      { label: "Price missing or expired" },
    ),
  };
}

/** What a truck holds, as a plain number of the unit. */
const heldBy = { ton: "truck_payload/1[‹ton|t›]", "yd³": "bulk_load/1[‹yd³|m³›]" } as const;

/** Loads in parts, by weight and by volume; with a prefix, of a whole table. */
export const loadsBy = (prefix = "", carried = "1") => {
  const of = (counted: string, holds: string) =>
    `LOADS(${carried},${prefix}unit,${prefix}order_quantity,${counted},${holds})`;
  return {
    weight: of('"‹ton|t›"', heldBy.ton),
    volume: of('"‹yd³|m³›"', heldBy["yd³"]),
  };
};

/** Whole loads of what a line buys by the truck load, waste and packs included. Its unit is of weight or of volume. */
export const wholeLoads = (unit: keyof typeof heldBy, ordered: string): string =>
  `WHOLE_UP(${ordered}/MAX(0.01,${heldBy[unit]}))`;

const packOf = "IF(INDEX(items.pack,MAX(at,1))>0,INDEX(items.pack,MAX(at,1)),1)";
