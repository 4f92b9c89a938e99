import type { NamedFormula } from "../formula/named-formula.js";
import type { BookLayout } from "./book-layout.js";
import type { Built } from "./built.js";
import type { AskingSheet, SheetDeclaration } from "./declare.js";
import type { Learns } from "./learns.js";

/** A set of sheets under a name and a version: what a kind of job is estimated with. */
export interface Template {
  readonly name: string;
  readonly version: number;
  readonly title: string;
  readonly sheets: readonly SheetDeclaration[];
  /** The sheets that ask for inputs by kind; without them, inputs stand where they are declared. */
  readonly asks?: readonly AskingSheet[];
  readonly formulas: readonly NamedFormula[];
  /** The tables of the office book that it reads; none where it is absent. */
  readonly office?: BookLayout;
  /** Templates that one office book serves with it: asked when a book is read or written. */
  readonly sharesBook?: () => readonly Pick<Template, "name" | "sheets" | "office">[];
  /** The cells whose change a person wants to see first: price, weight, days. */
  readonly headline: readonly string[];
  /** Names of it that help texts show. */
  readonly example?: Example;
  /** Which cells play which part, for commands that work on any template. */
  readonly roles?: Roles;
  /** Its workbooks are no bids: they learn rates from built jobs. */
  readonly learns?: Learns;
  /** Set as it is loaded: it came from a file of an office's own, whose workbooks say so. */
  readonly own?: { readonly file: string };
}

/** Names of a template for the examples in help texts. */
export interface Example {
  readonly table: string;
  /** An input in a row of it, and what could be typed there. */
  readonly input: string;
  readonly typed: string;
  /** A column of it that is calculated. */
  readonly result: string;
  /** A single figure besides the price. */
  readonly figure: string;
}

/** Names of cells by the part they play in a bid. */
export interface Roles {
  /** What the job is offered for; what the customer pays, where `agreed.sum` names no other cell. */
  readonly price: string;
  /** The price before it is rounded. */
  readonly exact?: string;
  /** What the job costs the office: contingency included, profit not. */
  readonly cost: string;
  /** The sum of money kept for what may go wrong. */
  readonly contingency?: string;
  /** How far built jobs went over what was bid, as the office's own jobs showed. */
  readonly overrun?: Overrun;
  /** What is to be built, and for whom: text cells that head the workbook. */
  readonly title?: string;
  readonly customer?: string;
  /** The yes or no whether a job holds all that it needs before it shows a price. */
  readonly described?: string;
  /** The text cell that says what is to be done before a bid that stands is sent; blank where nothing is. */
  readonly toSend?: string;
  /** The text cell that names the file of the office's logo, from the folder of its book. */
  readonly logo?: string;
  /** Input cells that say who gave the values of a workbook: who walked the site and when, who chose. */
  readonly givers?: Givers;
  /** The parts that make up the price or the cost, in the order to show them. */
  readonly sections: readonly Section[];
  /** The column of an office-book table that holds the last day of each quote: `items.good_until`. */
  readonly goodUntil?: string;
  /**
   * What a customer is told in a change order: names of inputs, columns (`runs.length`) or tables
   * (`runs`, all its inputs). Without it, only the headline figures that are not money.
   */
  readonly told?: readonly string[];
  /**
   * Inputs that are the office's own affair, such as margin and crew, named as in `told`: a change of
   * them moves no change order unless the office says so.
   */
  readonly office?: readonly string[];
  /** The page that the customer agrees to. */
  readonly agreed?: Agreed;
  /** Where a job tells what it really took: how programs read it without knowing the trade. */
  readonly built?: Built;
}

/**
 * Where a bid holds what built jobs showed of how far the work went over its plan. Workbooks that learn put it into the
 * office book's rules; all are blank until then.
 */
export interface Overrun {
  /** Inputs asked of the office: the overrun as a share, in half of the jobs and in one of five. */
  readonly half: string;
  readonly fifth: string;
  /** Inputs asked of the office: on how many jobs that rests, and in words where it comes from. */
  readonly jobs: string;
  readonly source: string;
  /** Money: the part of the cost that goes with the work, by how much an overrun of the whole would raise the cost. */
  readonly moves: string;
  /** Money: the contingency that covers an overrun as in one of five. */
  readonly covered: string;
  /** Inputs and columns that tell the pace of the work: a range of one is not drawn beside an overrun that was learned. */
  readonly pace: readonly string[];
}

/** Names of text and date inputs. */
export interface Givers {
  readonly walkedBy: string;
  readonly walkedOn: string;
  readonly chosenBy: string;
  /** Who filled in the sheets that are filled in after the work, and when. */
  readonly builtBy?: string;
  readonly builtOn?: string;
}

/** Which cells make the page that the customer agrees to, by name. */
export interface Agreed {
  /** What people call the page: `offer`. */
  readonly name: string;
  /** The column that holds its lines, blank where a line is left out: `offer_lines.says`. */
  readonly lines: string;
  /** A line that begins so tells the state of the page and is not agreed on. */
  readonly draftMark?: string;
  /** Signs before an item or a heading, which are no words of the line. */
  readonly marks?: readonly string[];
  /** What the customer pays in all, where that is more or less than the price. */
  readonly sum?: string;
  /** The text cell of the page that tells it. */
  readonly sumSaid?: string;
  readonly number?: string;
  readonly site?: string;
  readonly contractor?: string;
  readonly days?: string;
  /** Columns of the table of draws. */
  readonly draws?: { readonly name: string; readonly amount: string };
}

export interface Section {
  readonly label: string;
  readonly name: string;
}

/** A template as it is declared: without named formulas or headline figures where it has none. */
export type TemplateDeclaration = Omit<Template, "formulas" | "headline" | "own"> &
  Partial<Pick<Template, "formulas" | "headline">>;

/**
 * A set of sheets under a name and a version. It is checked as it is compiled.
 *
 * @example
 * import { calc, compile, input, lines, quantities, sheet, template } from "rillbook";
 *
 * const { length, area } = quantities;
 * const room = template({
 *   name: "room",
 *   version: 1,
 *   title: "A room",
 *   sheets: [
 *     sheet("Room", "What the room measures.", [
 *       lines("Floor", {
 *         room_length: input(length, "Length", { least: 0 }),
 *         room_width: input(length, "Width", { least: 0 }),
 *         floor_area: calc(area, "room_length*room_width", "Floor"),
 *       }),
 *     ]),
 *   ],
 * });
 * const model = await compile(room, "us");
 */
export function template(declaration: TemplateDeclaration): Template {
  return Object.freeze({ formulas: [], headline: [], ...declaration });
}
