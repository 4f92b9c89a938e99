import { type Quantity, yesno as yesnoQuantity } from "../units/quantity.js";
import type { Reader } from "../units/spelled.js";

/** A formula as written, or one for each row of a table (rows count from 1). */
export type FormulaText = string | ((row: number) => string);

export type InputValue = number | string | boolean;

interface Common {
  readonly label: string;
  readonly quantity: Quantity;
  /** A sentence for whoever fills in or reads the cell. */
  readonly note?: string;
  /** Where a figure or rule comes from. */
  readonly source?: string;
  /** Decimals shown, where the quantity's own do not suit. */
  readonly decimals?: number;
  /** Set by the compiler: it stands beside an input and tells of the office book. */
  readonly beside?: true;
  /** Set by the compiler: the cell or column that this one shows again on another sheet. */
  readonly repeats?: string;
}

/** When a person is asked for an input: on the site, while choosing, or once for all jobs, in the office's book. */
export type Asked = "walk" | "decision" | "office";

/** A figure that a person gives. Numbers are in the quantity's US unit here. */
export interface InputDeclaration extends Common {
  readonly kind: "input";
  /** Which sheet asks for it; where it is declared, without this. */
  readonly asked?: Asked;
  /** Its section on the sheet that asks for it; that of its block, without this. */
  readonly section?: string;
  /** Shown again, as a formula, where it is declared: read there beside the results. */
  readonly again?: boolean;
  readonly default?: InputValue;
  readonly least?: number;
  readonly most?: number;
  readonly whole?: boolean;
  /** May stay blank; without this and without a default it must be given. */
  readonly optional?: boolean;
  /** The values to choose from: texts, or a column such as `looks.name`. */
  readonly choices?: readonly string[] | string;
  /** Holds a code of this table of the office book: the rows that such inputs name go into the bid. */
  readonly codeOf?: string;
}

/** A figure, a text or a yes or no that is calculated. */
export interface CalcDeclaration extends Common {
  readonly kind: "calc";
  readonly formula: FormulaText;
  /** The first row's formula, where the others look at the row above. */
  readonly first?: string;
  /** What a blank row holds; 0, "" or FALSE unless told, and in a row that has `first`. */
  readonly blank?: string;
  /** Words shown for a zero that stands for no figure, such as "none". */
  readonly zero?: string;
  /** Words shown from a figure on that stands for no figure, such as "shut" for an endless loss. */
  readonly beyond?: { readonly from: number; readonly says: string };
  /** A total or result that people look for: set in bold. */
  readonly strong?: boolean;
  /** A step on the way, which nobody reads on the sheet: it stands on sheet Workings. */
  readonly working?: boolean;
  /** For whom a sentence spells its units: the office, unless told. */
  readonly reader?: Reader;
}

/** A yes/no cell; `sentence` is shown where it is no, with `{name}` for figures. */
export interface CheckDeclaration extends Common {
  readonly kind: "check";
  readonly formula: FormulaText;
  readonly sentence: string;
  /** `must`: the bid does not stand without it. `look`: a warning. */
  readonly level: "must" | "look";
  /** Of a table's check: the input of the row beside which it is told as well, and in which few words. */
  readonly toldAt?: { readonly input: string; readonly says: string };
}

/** A figure from a published table or standard. US units. */
export interface PublishedDeclaration extends Common {
  readonly kind: "published";
  readonly value?: InputValue;
  /** Nobody reads it on the sheet: it stands on sheet Workings. */
  readonly working?: true;
  /** Set by the compiler: its value is the number of the row, or what people call it. */
  readonly numbersRows?: true;
  readonly namesRows?: true;
}

/** A figure copied from the office book. */
export interface BookDeclaration extends Common {
  readonly kind: "book";
}

/** What a cell is declared as. */
export type CellDeclaration =
  | InputDeclaration
  | CalcDeclaration
  | CheckDeclaration
  | PublishedDeclaration
  | BookDeclaration;

type Rest<T extends Common> = Partial<Omit<T, "kind" | "quantity" | "label">>;

/**
 * A cell that a person fills in.
 *
 * @param quantity what it measures; a template never names a unit
 * @param label what people read beside it, noun first
 * @param rest default, limits, choices, note and source; numbers are in the quantity's US unit
 */
export function input(
  quantity: Quantity,
  label: string,
  rest: Rest<InputDeclaration> = {},
): InputDeclaration {
  return Object.freeze({ kind: "input", quantity, label, ...rest });
}

const askedFor =
  (asked: Asked) =>
  (quantity: Quantity, label: string, rest: Rest<InputDeclaration> = {}): InputDeclaration =>
    input(quantity, label, { asked, ...rest });

/** An input that the site answers: asked on the walk. */
export const walk = askedFor("walk");
/** An input that the estimator chooses for this job. */
export const decide = askedFor("decision");
/** An input that holds for every job: the office's book gives it, and a job may override it. */
export const office = askedFor("office");

/** Is a value asked of the office, for all jobs? */
export const isOffice = (cell: CellDeclaration): cell is InputDeclaration =>
  cell.kind === "input" && cell.asked === "office";

/**
 * A cell that is calculated: one native formula in the workbook.
 *
 * @param formula spreadsheet arithmetic with names, such as `width*height`; a number may carry its unit, `6[in]`
 * @param label what people read beside it
 */
export function calc(
  quantity: Quantity,
  formula: FormulaText,
  label: string,
  rest: Rest<CalcDeclaration> = {},
): CalcDeclaration {
  return Object.freeze({ kind: "calc", quantity, formula, label, ...rest });
}

/**
 * A condition that must hold (`must`: the bid does not stand without it) or is worth a look (`look`). Its
 * sentence shows where it does not.
 *
 * @param formula a condition, true where all is well
 * @param sentence what is wrong and what to do, with `{name}` or `{name|decimals}` for figures
 *
 * @example
 * import { check } from "rillbook";
 *
 * const bearable = check("load<=bearing_load", "The beam bears {bearing_load}, not {load}: take a deeper one", {
 *   label: "Beam overloaded",
 * });
 */
export function check(
  formula: FormulaText,
  sentence: string,
  rest: Partial<Omit<CheckDeclaration, "kind" | "quantity" | "formula" | "sentence">> & {
    label: string;
  },
): CheckDeclaration {
  return Object.freeze({
    kind: "check",
    quantity: yesnoQuantity,
    formula,
    sentence,
    level: "must",
    ...rest,
  });
}

/** A figure from a published table or standard, with its source; in the quantity's US unit. */
export function published(
  quantity: Quantity,
  label: string,
  rest: Rest<PublishedDeclaration> & { source: string },
): PublishedDeclaration {
  return Object.freeze({ kind: "published", quantity, label, ...rest });
}

/** A figure copied from the office book, as a column of a table that names one by `from`. */
export function book(
  quantity: Quantity,
  label: string,
  rest: Rest<BookDeclaration> = {},
): BookDeclaration {
  return Object.freeze({ kind: "book", quantity, label, ...rest });
}
