import type { Tree } from "../tree.js";
import type { Type } from "../type.js";
import type { Argument, Value } from "../value.js";

/** An argument with its type, as the checker hands it to a function's rule. */
export interface Typed {
  readonly tree: Tree;
  readonly type: Type;
}

/** What a rule may ask of the checker. */
export interface Rules {
  /** The argument in the scale of `wanted`; fails where it does not fit. */
  fit(argument: Typed, wanted: Type, what: string): Tree;
  fail(reason: string): never;
}

/** Checks the arguments, brings them to a common scale and tells what comes out. */
export type Check = (args: readonly Typed[], rules: Rules) => { args: Tree[]; type: Type };

/** A spreadsheet function; its arguments are evaluated already. Throws CellError. */
export type NativeFunction = (args: readonly Argument[]) => Value;

/** Writes arguments as JavaScript over the values of a job. */
export interface Coder {
  value(tree: Tree | undefined): string;
  number(tree: Tree | undefined): string;
  condition(tree: Tree | undefined): string;
  /** A cell's value as it stands, errors too; undefined where the tree is no cell. */
  cell(tree: Tree | undefined): string | undefined;
  /** `values,from,rows` of a column, which need not be copied then; undefined where it is none. */
  column(tree: Tree | undefined): string | undefined;
  /** `values,[from,rows,…]` of the cells of a sheet, likewise. */
  area(tree: Tree | undefined): string | undefined;
}

/** JavaScript of a function's own, where it looks at errors, skips arguments or can be faster. */
export interface Code {
  /** The expression; undefined where these arguments go to `run`. */
  readonly write: (args: readonly Tree[], coder: Coder) => string | undefined;
  /** What the expression calls, by name; the names of all functions are told apart. */
  // biome-ignore lint/suspicious/noExplicitAny: each has arguments of its own
  readonly calls?: Readonly<Record<string, (...args: any[]) => unknown>>;
}

/** A function of single values, called by this name without a list of them; whole columns go to `run`. */
export const direct = (name: string, call: (...values: Value[]) => Value): Code => ({
  write: (args, { value }) =>
    args.some(isMany) ? undefined : `${name}(${args.map(value).join(",")})`,
  calls: { [name]: call },
});

export const isMany = ({ kind }: Tree): boolean => kind === "column" || kind === "area";

/** What hyperformula hands over: a value without errors, a range, either, or as its own types. */
export type JudgeArgument = "value" | "range" | "either" | "number" | "scalar";

/** Our function in hyperformula, where its own lacks or is wrong; else its own is a second opinion. */
export interface JudgeOverride {
  readonly takes: readonly JudgeArgument[];
  /** So many of the last arguments may come again and again. */
  readonly again?: number;
  /** What hyperformula 3.5.0 gives by itself. */
  readonly since: string;
}

/** All that there is to say of a spreadsheet function that templates may use. */
export interface Native {
  readonly name: string;
  /** How many arguments it takes. */
  readonly least: number;
  readonly most: number;
  readonly check: Check;
  /** Which of its arguments (from 0) may be whole columns; none where left out. */
  readonly columns?: (place: number) => boolean;
  /** Goes through columns row by row, so that its arguments may calculate with them. */
  readonly rowByRow?: true;
  /** May take all cells of a sheet, to look for errors in them. */
  readonly area?: true;
  /** Its result is a text even where what it is given is blank. */
  readonly makesText?: true;
  /** Stored with the prefix `_xlfn.` in a file, since it is newer than the first edition of the standard. */
  readonly prefixed?: true;
  /** Why templates may not write it, and what to write: it passes over errors. The look-ups may. */
  readonly refused?: string;
  /** Why it takes a cell and nothing else: of a calculation it would swallow an error. */
  readonly ofCell?: string;
  /** Absent where it does not evaluate all its arguments: `code` does then. */
  readonly run?: NativeFunction;
  readonly code?: Code;
  readonly judge?: JudgeOverride;
}

/** Describes a function: its name, how many arguments it takes, and what else there is to say of it. */
export function native(
  name: string,
  [least, most = least]: readonly [least: number, most?: number],
  rest: Omit<Native, "name" | "least" | "most">,
): Native {
  return Object.freeze({ name, least, most, ...rest });
}
