import type { RawCellContent } from "hyperformula";
import { columnLetters } from "../address.js";
import { print } from "../formula/print.js";
import type { Tree } from "../formula/tree.js";
import { CellError, type Value } from "../formula/value.js";
import type { Cell } from "../template/model.js";
import { alike } from "./agree.js";
import { type JudgedValue, type JudgeTask, ownValue } from "./judge-task.js";
import { gap, isSingle, type Question, QuestionForm } from "./question-form.js";

/** A cell in which two reckonings differ. */
export interface Difference {
  readonly cell: Cell;
  readonly values: readonly [Value | undefined, Value | undefined];
}

/** Where the questions with the values that they read stand, and the columns that they go through. */
const [sheet, columnsSheet] = ["Questions", "Columns"] as const;

/** Lines of the sheet of columns: they stand one under another, since hyperformula takes room for every empty cell. */
const lines = 5000;

/** What a question reads: a value by its place among all of them, or a column of values by its address. */
export type Operand = Extract<Tree, { kind: "scalar" }> & { readonly place?: number };

/**
 * Formulas on known values, each asked once: hyperformula is given them on a sheet of their own, those alike together
 * with their values beside them, and whole columns on another.
 */
export class Questions {
  readonly #asked: Question[] = [];
  readonly #forms = new Map<string, QuestionForm>();
  readonly #operands = new Map<Value, Operand>();
  readonly #errors = new Map<string, Operand>();
  readonly #values: RawCellContent[] = [];
  readonly #columns: RawCellContent[][] = [];
  /** By what they hold. */
  readonly #places = new Map<string, Operand>();
  #difference: Difference | undefined;
  /** What the formula reads that is printed now. */
  #reads: number[] = [];
  readonly #style = {
    prefixed: false,
    exponent: "e",
    quotes: "joined",
    calledBooleans: true,
    reference: (tree: Tree) => {
      const { name, place } = tree as Operand;
      if (place === undefined) return name;
      this.#reads.push(place);
      return gap;
    },
  } as const;

  /** A value, as a part of a question. */
  operand(value: Value): Operand {
    const isError = value instanceof CellError;
    const known = isError ? this.#errors.get(value.code) : this.#operands.get(value);
    if (known !== undefined) return known;
    const place = this.#values.push(content(value)) - 1;
    const made: Operand = { kind: "scalar", name: gap, place };
    if (isError) this.#errors.set(value.code, made);
    else this.#operands.set(value, made);
    return made;
  }

  /** The address of a column of values. Columns that hold the same stand there once: tables of goods and published ones, of all jobs. */
  column(values: readonly Value[]): Operand {
    const key = values.map(told).join(gap);
    const known = this.#places.get(key) ?? this.#laidOut(values);
    this.#places.set(key, known);
    return known;
  }

  #laidOut(values: readonly Value[]): Operand {
    const last = this.#columns.at(-1);
    const room = last !== undefined && last.length + values.length <= lines;
    const column = room ? last : [];
    if (!room) this.#columns.push(column);
    const from = column.length + 1;
    for (const value of values) column.push(content(value));
    const letters = columnLetters(this.#columns.length);
    return {
      kind: "scalar",
      // absolute, so that hyperformula knows a formula again that it read in another row
      name: `${columnsSheet}!$${letters}$${from}:$${letters}$${column.length}`,
    };
  }

  /** Asks what a formula on these operands comes to. */
  ask(formula: Tree, expected: Value, cell: Cell): void {
    this.#reads = [];
    const text = print(formula, this.#style);
    // hyperformula looks for what no cell can hold where a formula ends, and not in each row of many
    const alone = expected instanceof CellError;
    const of = alone ? `${text} ` : text;
    const form = this.#forms.get(of) ?? new QuestionForm(text, !alone && isSingle(formula));
    this.#forms.set(of, form);
    let key = this.#reads.join(" ");
    let known = form.known(key);
    // what is expected to come to something else is asked again: the answer tells which of the cells is wrong
    while (known !== undefined && !alike(known.expected, expected)) {
      key += " ";
      known = form.known(key);
    }
    if (known !== undefined) return;
    const question = { expected, cell, reads: this.#reads, row: 0 };
    this.#asked.push(question);
    form.add(key, question);
  }

  /** Two values of a cell that nothing has to be asked about. */
  mustBe(one: Value, other: Value, cell: Cell): void {
    if (!alike(one, other)) this.#difference ??= { cell, values: [one, other] };
  }

  get count(): number {
    return this.#asked.length;
  }

  /** All questions, in the order in which they were asked. */
  task(): JudgeTask {
    const rows: RawCellContent[][] = [];
    for (const form of this.#forms.values()) form.layOut(rows, this.#values);
    const sheets = { [sheet]: rows, [columnsSheet]: turned(this.#columns) };
    return { sheets, places: this.#asked.flatMap(({ row }) => [0, row, 0]) };
  }

  /** A cell whose value is not what was expected, or has another answer. */
  difference(answers: readonly JudgedValue[]): Difference | undefined {
    for (const [i, { expected, cell }] of this.#asked.entries()) {
      const judged = ownValue(answers[i] as JudgedValue, cell);
      if (!alike(judged, expected)) this.#difference ??= { cell, values: [judged, expected] };
    }
    return this.#difference;
  }
}

/** A value in words that no other value has. */
function told(value: Value): string {
  if (typeof value === "string") return `"${value}`;
  return value instanceof CellError ? value.code : String(value);
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
