import type { RawCellContent } from "hyperformula";
import { columnLetters } from "../address.js";
import { print } from "../formula/print.js";
import type { Tree } from "../formula/tree.js";
import { CellError, type Value } from "../formula/value.js";
import type { Cell } from "../template/model.js";
import { alike } from "./agree.js";
import { type JudgedValue, type JudgeTask, ownValue } from "./judge-task.js";

/** A formula on known values, and what it comes to by our reckoning. */
interface Question {
  readonly expected: Value;
  /** The first cell in which it arose. */
  readonly cell: Cell;
}

/** A cell in which two reckonings differ. */
export interface Difference {
  readonly cell: Cell;
  readonly values: readonly [Value | undefined, Value | undefined];
}

/** Where the questions with the values that they read stand, and the columns that they go through. */
const [sheet, columnsSheet] = ["Questions", "Columns"] as const;

/** Lines of the sheet of columns: they stand one under another, since hyperformula takes room for every empty cell. */
const lines = 5000;

const style = {
  prefixed: false,
  exponent: "e",
  quotes: "joined",
  calledBooleans: true,
  // operands carry their address as their name
  reference: (tree: Tree) => (tree as Operand).name,
} as const;

export type Operand = Extract<Tree, { kind: "scalar" }>;

/**
 * Formulas on known values, each asked once: hyperformula is given them on a sheet of their own, the values
 * beside them and whole columns on another.
 */
export class Questions {
  readonly #asked = new Map<string, Question>();
  readonly #operands = new Map<Value, Operand>();
  readonly #errors = new Map<string, Operand>();
  readonly #values: RawCellContent[] = [];
  readonly #columns: RawCellContent[][] = [];
  #difference: Difference | undefined;

  /** The address of a value, as a part of a question. */
  operand(value: Value): Operand {
    const isError = value instanceof CellError;
    const known = isError ? this.#errors.get(value.code) : this.#operands.get(value);
    if (known !== undefined) return known;
    const place = this.#values.push(content(value));
    const made: Operand = { kind: "scalar", name: `B${place}` };
    if (isError) this.#errors.set(value.code, made);
    else this.#operands.set(value, made);
    return made;
  }

  /** The address of a column of values, which is laid out for each call. */
  column(values: readonly Value[]): Operand {
    const last = this.#columns.at(-1);
    const room = last !== undefined && last.length + values.length <= lines;
    const column = room ? last : [];
    if (!room) this.#columns.push(column);
    const from = column.length + 1;
    for (const value of values) column.push(content(value));
    const letters = columnLetters(this.#columns.length);
    return {
      kind: "scalar",
      name: `${columnsSheet}!${letters}${from}:${letters}${column.length}`,
    };
  }

  /** Asks what a formula on these operands comes to. */
  ask(formula: Tree, expected: Value, cell: Cell): void {
    let text = print(formula, style);
    let known = this.#asked.get(text);
    // what is expected to come to something else is asked again: the answer tells which of the cells is wrong
    while (known !== undefined && !alike(known.expected, expected)) {
      text += " ";
      known = this.#asked.get(text);
    }
    if (known === undefined) this.#asked.set(text, { expected, cell });
  }

  /** Two values of a cell that nothing has to be asked about. */
  mustBe(one: Value, other: Value, cell: Cell): void {
    if (!alike(one, other)) this.#difference ??= { cell, values: [one, other] };
  }

  get count(): number {
    return this.#asked.size;
  }

  /** All questions, in the order in which they were asked. */
  task(): JudgeTask {
    const texts = [...this.#asked.keys()];
    const rows = Math.max(texts.length, this.#values.length);
    const sheets = {
      [sheet]: Array.from({ length: rows }, (_, i) => [
        i < texts.length ? `=${texts[i]}` : null,
        this.#values[i] ?? null,
      ]),
      [columnsSheet]: turned(this.#columns),
    };
    return { sheets, places: texts.flatMap((_, i) => [0, i, 0]) };
  }

  /** A cell whose value is not what was expected, or has another answer. */
  difference(answers: readonly JudgedValue[]): Difference | undefined {
    let place = 0;
    for (const { expected, cell } of this.#asked.values()) {
      const judged = ownValue(answers[place++] as JudgedValue, cell);
      if (!alike(judged, expected)) this.#difference ??= { cell, values: [judged, expected] };
    }
    return this.#difference;
  }
}

/** A value, errors too, as the content of a cell. */
function content(value: Value): RawCellContent {
  if (value instanceof CellError) return value.code;
  // the quote keeps text from being read as a date, a number, an error or a formula
  return typeof value === "string" ? `'${value}` : value;
}

/** Columns as rows; what a shorter one lacks is blank. */
function turned(columns: readonly (readonly RawCellContent[])[]): RawCellContent[][] {
  const rows = Math.max(0, ...columns.map(({ length }) => length));
  return Array.from({ length: rows }, (_, i) => columns.map((column) => column[i] ?? null));
}
