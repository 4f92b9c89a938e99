import type { Block, ChartBlock } from "../../engine/template/index.js";
import type { PlacedLine } from "../plan/page-line.js";
import type { SheetName } from "../plan/worksheets.js";
import type { Added, Cells, Spot, Words } from "./added.js";
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

/** A place that is dug and that somebody may stand in: each figure is a formula. */
export interface DugPlace {
  readonly what: string;
  readonly depth: string;
  readonly length: string;
  /** Length of the sides that shoring would hold. */
  readonly around: string;
  /** Run of its sides to 1 of height; 0 is upright. */
  readonly sides: string;
  readonly protection: string;
}

/** The heaviest thing of a part that is lifted into place; its name stands in the cell `heaviest_said`. */
export interface Heavy {
  /** A formula. */
  readonly weight: string;
  /** Where a lighter one is chosen, as a check says it. */
  readonly lighter: string;
}

/** What all parts bring together, each list in the order in which it is shown. */
export interface Whole {
  /** In the order of building. */
  readonly tasks: readonly Task[];
  /** What a job is called until somebody says so. */
  readonly title: string;
  readonly added: Added;
  readonly cellsAt: (spot: Spot) => Cells;
  readonly heavy: readonly Heavy[];
  readonly digs: readonly DugPlace[];
  readonly metered: readonly Block[];
  readonly readings: readonly Block[];
  readonly words: Words;
  readonly purposes: Readonly<Record<string, string>>;
  readonly rates: readonly Rate[];
  /** Codes of those that formulas read, besides tasks and hires. */
  readonly ratesRead: readonly string[];
  readonly items: readonly Item[];
  readonly buys: readonly BuysOfSheet[];
  readonly takeoff: readonly UsualLine[];
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
