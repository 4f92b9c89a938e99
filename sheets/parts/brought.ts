import type { SheetName } from "../plan/worksheets.js";
import type { Buy, Item, UsualLine } from "./goods.js";
import type { PageLine } from "./page-line.js";
import type { Rate } from "./rates.js";
import type { Task } from "./task.js";

/** What a sheet asks the office to buy. */
export interface BuysOfSheet {
  readonly sheet: SheetName;
  /** The name of the table that lists it there. */
  readonly table: string;
  readonly buys: readonly Buy[];
}

/** What all parts bring together, each list in the order in which it is shown. */
export interface Whole {
  /** In the order of building. */
  readonly tasks: readonly Task[];
  readonly rates: readonly Rate[];
  readonly items: readonly Item[];
  readonly buys: readonly BuysOfSheet[];
  readonly takeoff: readonly UsualLine[];
  readonly crew: readonly PageLine[];
  readonly proposal: readonly PageLine[];
}
