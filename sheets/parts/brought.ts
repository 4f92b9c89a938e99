import type { Block, ChartBlock } from "../../engine/template/index.js";
import type { PlacedLine } from "../plan/page-line.js";
import type { SheetName } from "../plan/worksheets.js";
import type { Buy, Item, UsualLine } from "./goods.js";
import type { Hire } from "./hire.js";
import type { Rate } from "./rates.js";
import type { Task } from "./task.js";
import type { Trench } from "./trenched.js";

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
  /** Formulas, added up where the main, the running cost and the circuit are worked out. */
  readonly mainLosses: readonly string[];
  readonly watts: readonly string[];
  readonly currents: readonly string[];
  readonly hires: readonly Hire[];
  readonly trenches: readonly Trench[];
  readonly crew: readonly PlacedLine<string>[];
  readonly proposal: readonly PlacedLine<string>[];
  /** What the customer is left with on the last day. */
  readonly handOver: readonly PlacedLine<string>[];
  readonly proposalDrawings: readonly ChartBlock[];
  /** What stands on the crew's first page, below the dangers: drawings, a table to set out by. */
  readonly crewDrawings: readonly Block[];
}
