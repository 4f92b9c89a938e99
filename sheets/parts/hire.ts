import { openingAt } from "./goods.js";
import { hire, type Rate } from "./rates.js";

/** What is hired or paid by the piece: machines, trucks, inspections, permits. */
export interface Hire {
  readonly what: string;
  /** A formula for how much: an area, a length … as the rate counts in one, or a count. */
  readonly quantity: string;
  readonly rate: Rate;
}

/** A line of hire with the rate of the office book that it is priced by, such as `$/day`; what a new book opens with. */
export const hired = (
  what: string,
  quantity: string,
  code: string,
  means: string,
  unit: string,
  placeholder?: number,
): Hire => ({ what, quantity, rate: { ...hire(code, means, unit), ...openingAt(placeholder) } });
