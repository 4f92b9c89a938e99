import type { RawCellContent } from "hyperformula";
import { columnLetters } from "../address.js";
import { natives } from "../formula/functions/index.js";
import { partsOf, type Tree } from "../formula/tree.js";
import type { Value } from "../formula/value.js";
import type { Cell } from "../template/model.js";

/** A formula on known values, and what it comes to by our reckoning. */
export interface Question {
  readonly expected: Value;
  /** The first cell in which it arose. */
  readonly cell: Cell;
  /** What it reads, in the order of the formula: places among all values. */
  readonly reads: readonly number[];
  /** The row in which it is answered, from 0, once it is laid out. */
  row: number;
}

/** Stands for a value in the text of a form: no text of a formula can hold it. */
export const gap = "\0";

/** What hyperformula calculates for many rows at a go, as it does for one; for few it is not worth the while. */
const fewest = 2;

/**
 * Questions that differ only in the values they read. Each takes a row, its values beside its answer. Where the formula
 * works on single values alone, hyperformula is given it once, on the columns of values, and answers all rows by the same
 * arithmetic: to read a formula takes it far longer than to calculate it. Else each row has its own, written alike.
 */
export class QuestionForm {
  readonly #texts: readonly string[];
  readonly #known = new Map<string, Question>();

  /**
   * @param text with gaps for the values
   * @param together may all rows be calculated at a go?
   */
  constructor(
    text: string,
    private readonly together: boolean,
  ) {
    this.#texts = text.split(gap);
  }

  /** The question on these values, where it was asked. */
  known(reads: string): Question | undefined {
    return this.#known.get(reads);
  }

  add(reads: string, question: Question): void {
    this.#known.set(reads, question);
  }

  /** Puts the questions below the rows that are there. */
  layOut(rows: RawCellContent[][], values: readonly RawCellContent[]): void {
    const questions = [...this.#known.values()];
    const from = rows.length + 1;
    const columns = this.#texts.slice(1).map((_, i) => columnLetters(i + 2));
    const together = this.together && columns.length > 0 && questions.length >= fewest;
    const end = from + questions.length - 1;
    for (const question of questions) {
      question.row = rows.length;
      const line = question.row + 1;
      const formula =
        together && line > from
          ? null
          : this.#written((i) =>
              together ? `${columns[i]}${from}:${columns[i]}${end}` : `${columns[i]}${line}`,
            );
      rows.push([formula, ...question.reads.map((place) => values[place] as RawCellContent)]);
    }
  }

  #written(operand: (place: number) => string): string {
    let formula = `=${this.#texts[0]}`;
    for (let i = 1; i < this.#texts.length; i++) formula += operand(i - 1) + this.#texts[i];
    return formula;
  }
}

/** Operators, and functions that take single values only, say of each row what they say of one. */
export function isSingle(formula: Tree): boolean {
  if (formula.kind === "call") {
    const native = natives.get(formula.name);
    const takesMany = native?.columns ?? native?.rowByRow ?? native?.area;
    // without either it looks at some of its arguments only: which ones is no matter of all rows
    if ((native?.run ?? native?.ofCell) === undefined || takesMany !== undefined) return false;
  }
  return partsOf(formula).every(isSingle);
}
