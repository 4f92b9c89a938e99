import type { NamedFormula } from "../../engine/formula/named-formula.js";
import type { Block, ChartBlock } from "../../engine/template/index.js";
import type { CrewSection } from "../plan/crew-page.js";
import type { HandOverSection } from "../plan/hand-over-page.js";
import type { PlacedLine } from "../plan/page-line.js";
import type { ProposalSection } from "../plan/proposal-page.js";
import type { SheetName } from "../plan/worksheets.js";
import type { Adds, Cells, Spot, Words } from "./added.js";
import type { DugPlace, Heavy, Whole } from "./brought.js";
import type { Buy, Item, UsualLine } from "./goods.js";
import type { Hire } from "./hire.js";
import type { Rate } from "./rates.js";
import type { Task } from "./task.js";
import type { Trench } from "./trenched.js";

/** What is made of all that the parts bring: the table of tasks, the takeoff, a page. */
export type Made<T> = (all: Whole) => T;

/** Blocks by worksheet. */
export type Placed = Readonly<Partial<Record<SheetName, readonly (Block | Made<Block | readonly Block[]>)[]>>>;

type Lines<Section extends string> = readonly PlacedLine<Section>[];

/** All that a part of the water feature brings; what it does not need is left out. */
export interface Brings {
  /** The section of its inputs on the sheets that ask for them; its name, unless they or it say another. */
  readonly section?: string;
  /** Its blocks, in its own order; on a sheet, parts stand in the order of the template's list. */
  readonly blocks?: Placed;
  /** What stands at the foot of a sheet: cautions, published tables, working lists. */
  readonly below?: Placed;
  readonly formulas?: readonly NamedFormula[];
  /** What it buys, listed on the sheet where it is worked out; its code is chosen there. */
  readonly buys?: Readonly<Partial<Record<SheetName, readonly Buy[]>>>;
  /** What it buys by the item that it usually is. */
  readonly takeoff?: readonly UsualLine[];
  readonly tasks?: readonly Task[];
  /** Rates that its formulas read: the office book has them whatever the job. */
  readonly rates?: readonly Rate[];
  /** Items that a new office book opens with, besides those of its takeoff lines. */
  readonly items?: readonly Item[];
  /** What a job is called until somebody says so. */
  readonly title?: string;
  /** What it adds to figures of other parts. */
  readonly adds?: Adds;
  /** Cells that it puts into blocks of other parts. */
  readonly cells?: Readonly<Partial<Record<Spot, Cells>>>;
  /** The heaviest thing that it lifts into place. */
  readonly heavy?: Heavy;
  /** What is metered of it once it runs, for sheet Built. */
  readonly metered?: readonly Block[];
  /** What these readings say, for sheet Look back. */
  readonly readings?: readonly Block[];
  /** Places that it digs, besides basin and trenches. */
  readonly digs?: readonly DugPlace[];
  /** Words that shared labels use, where the trade has others than that of a waterfall. */
  readonly words?: Partial<Words>;
  /** What a sheet is for, where the plan says it in words of another trade. */
  readonly purposes?: Readonly<Partial<Record<SheetName, string>>>;
  /** What is hired for it, each with its rate. */
  readonly hires?: readonly Hire[];
  /** Trenches that its pipe or cable lies in. */
  readonly trenches?: readonly Trench[];
  readonly crew?: Lines<CrewSection> | ((all: Pick<Whole, "tasks" | "trenches" | "digs">) => Lines<CrewSection>);
  readonly proposal?: Lines<ProposalSection>;
  /** What the owner reads after the last day. */
  readonly handOver?: Lines<HandOverSection>;
  /** Drawings for the customer, below the opening of the proposal. */
  readonly proposalDrawings?: readonly ChartBlock[];
  /** Drawings and tables of the crew's first page, below the dangers. */
  readonly crewDrawings?: readonly Block[];
  /** Inputs whose change a customer is told of. */
  readonly told?: readonly string[];
  /** Inputs that are the office's own affair. */
  readonly office?: readonly string[];
}

/** A part of the water feature, or of the estimate: what one folder holds. */
export interface Part extends Brings {
  readonly name: string;
  /** One sentence: what it is for. */
  readonly means: string;
}

export const part = (name: string, means: string, brings: Brings): Part => Object.freeze({ name, means, ...brings });
