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
  yesno,
} from "../../../engine/template/index.js";

import { sameKind, unitsIn } from "../../tables/trade-units.js";
import { quotedOr } from "./job-quotes.js";

/** The row of the items that has exactly this code: a look-up alone would take * and ? as wildcards. */
const exactRow = 'IF(LEN(code)>0,IF(PICK_OR(items.code,items.code,code,"")=code,PLACE_OR_ZERO(items.code,code),0),0)';

const fromItem = (column: string, otherwise: string): string =>
  `IF(at>0,INDEX(items.${column},MAX(at,1)),${otherwise})`;

/** The same, unless a quote for this job names the item. */
const quoted = (column: string, otherwise: string): string =>
  `IF(at>0,${quotedOr(column, "code", `INDEX(items.${column},MAX(at,1))`)},${otherwise})`;

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
    book_unit: calc(text, fromItem("unit", '""'), "Unit in the book", { working: true }),
    same_kind: calc(yesno, `IF(at>0,${sameKind("unit", "book_unit")},FALSE)`, "Same kind of unit", { working: true }),
    book_share: calc(precise, `IF(same_kind,${unitsIn("unit", "book_unit")},1)`, "Units per book unit", {
      working: true,
      note: "1 where the book sells by the bid's own unit.",
    }),
    order_quantity: calc(
      number,
      `IF(needed>0,BUY_IN_PACKS(needed*(1+waste),IF(at>0,MAX(${packOf},0.001)*book_share,1)),0)`,
      "Order quantity",
    ),
    ...(line.by_load && { loads: calc(count, loads, "Truck loads if alone", { working: true }) }),
    unit_cost: calc(money, `${quoted("cost", "0")}/book_share`, "Unit cost"),
    cost: calc(money, "ROUND(order_quantity*unit_cost,2)", "Cost"),
    tax: calc(
      money,
      "IF(cost>0,ROUND(cost*PICK(taxes.share,taxes.class,INDEX(items.tax_class,MAX(at,1))),2),0)",
      "Sales tax",
      { working: true },
    ),
    supplier: calc(text, quoted("supplier", '""'), "Supplier"),
    good_until: calc(date, quoted("good_until", "0"), "Good until"),
    found: check(
      "OR(needed<=0,at>0)",
      '{description}: the office book has no item "{code}", so it is not in the price. Add that item to sheet Items of the book.',
      { label: "Not in the office book" },
    ),
    unit_fits: check(
      "IF(OR(needed<=0,at=0),TRUE,same_kind)",
      "{description}, code {code}: counted in {unit}, but sold by {book_unit}, which measures something else. Choose an item sold by {unit}.",
      { label: "Unit does not fit" },
    ),
    quote_holds: check(
      "OR(needed<=0,at=0,good_until>=bid_date)",
      "{description}, code {code}: the price of {supplier} was good until {good_until}; the bid is dated {bid_date}. Ask for a new quote.",
      { label: "Price expired" },
    ),
  };
}

/** Loads in parts, by weight and by volume; with a prefix, of a whole table. */
export const loadsBy = (prefix = "") => {
  const of = (counted: string, holds: string) =>
    `LOADS(${prefix}by_load,${prefix}unit,${prefix}order_quantity,${counted},${holds})`;
  return {
    weight: of('"‹ton|t›"', "truck_payload/1[‹ton|t›]"),
    volume: of('"‹yd3|m3›"', "bulk_load/1[‹yd³|m³›]"),
  };
};

/** Whole loads of what is bought, waste and packs included. */
const loads = `WHOLE_UP(${loadsBy().weight}+${loadsBy().volume})`;

const packOf = "IF(INDEX(items.pack,MAX(at,1))>0,INDEX(items.pack,MAX(at,1)),1)";
