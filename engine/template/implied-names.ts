import { wordsOf } from "./area.js";

/** How the cells are called that the compiler adds. */
export const statusName = (input: string): string => `${input}_status`;
export const messageName = (check: string): string => `${check}_message`;

/** A cell shown again where it is declared, while it stands on the sheet that asks for it. */
export const againName = (name: string): string => `${name}_again`;

/** The column that says of a row whether its inputs on a sheet are right; at home, without `where`. */
export const statusKey = (where: string | undefined): string =>
  where === undefined ? "status" : `${wordsOf(where)}_status`;

/** The column that shows another one again on a sheet. */
export const repeatKey = (key: string, where: string | undefined): string =>
  where === undefined ? againName(key) : `${key}_on_${wordsOf(where)}`;

/** The one column for the eye, in a table with several messages. */
export const toDo = "to_do";

/** What the office book says of an input. */
export const copyName = (input: string): string => `${input}_in_book`;
/** What a status says of an input that holds another value than the office book. */
export const overridden = "≠ office book";
