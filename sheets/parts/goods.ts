import type { TradeUnit } from "../tables/trade-units.js";

/** A line to buy: what it is, its item code, the quantity as a number in the unit of the office book. */
export interface Buy {
  readonly what: string;
  /** A formula that yields the item code. */
  readonly code: string;
  /** A formula for the quantity: a length, an area, a weight … as `unit` is one, or a count. */
  readonly wanted: string;
  readonly unit: TradeUnit;
  /** Comes by the truck load, which its price does not hold: for units of ton and yd³. */
  readonly byLoad?: boolean;
  /** Waste that its line in the takeoff starts from: 0 unless told. */
  readonly waste?: number;
  /** A column that says in its row of what size it is ordered. */
  readonly sized?: string;
  /** A formula of words: the size or rating that a supplier would ask back for. */
  readonly said?: string;
  /** A column that says in its row what the line is, where people name it. */
  readonly named?: string;
}

/** What a new office book opens with until the office puts its own figure in. */
export interface Opening {
  /** A round figure in $, invented, in the US unit; that of its unit (`book/starter.ts`) unless told. */
  readonly placeholder?: number;
}

export const openingAt = (placeholder: number | undefined): Opening =>
  placeholder === undefined ? {} : { placeholder };

/** A line of the sheet with the item it usually is and the waste it usually has. */
export interface UsualLine extends Omit<Buy, "byLoad" | "named">, Opening {
  /** The item code itself. */
  readonly code: string;
}

/** An item that a new office book opens with. */
export interface Item extends Opening {
  readonly code: string;
  readonly description: string;
  readonly unit: TradeUnit;
}

export const item = (code: string, description: string, unit: TradeUnit, placeholder?: number): Item => ({
  code,
  description,
  unit,
  ...openingAt(placeholder),
});
