import { columnLetters, columnNumber, lastColumn, lastRow, type Position } from "./address.js";

/** A formula cut up once, so that it can be written out for many cells. */
export type CutFormula = readonly (string | Reference)[];

/** One coordinate pair; a missing half belongs to a whole row or column. */
interface Reference {
  readonly column: Coordinate | undefined;
  readonly row: Coordinate | undefined;
}

interface Coordinate {
  readonly value: number;
  readonly absolute: boolean;
}

const cell = /^(\$?)([A-Za-z]{1,3})(\$?)([1-9][0-9]{0,6})$/;
const wholeColumn = /^(\$?)([A-Za-z]{1,3})$/;
const wholeRow = /^(\$?)([1-9][0-9]{0,6})$/;
const word = /[\p{L}\p{N}_.\\?$]+/uy;

/**
 * Finds the references in a formula: A1, $A$1, A:C, 1:5, on this sheet or another. Text, quoted sheet names,
 * brackets (tables, other workbooks) and names of functions such as LOG10 are left as they are.
 * Runs in one pass, whatever the text.
 */
export function cutFormula(formula: string): CutFormula {
  const pieces: (string | Reference)[] = [];
  let plain = 0;
  let at = 0;
  const push = (start: number, end: number, reference: Reference | undefined) => {
    if (reference === undefined) return;
    if (start > plain) pieces.push(formula.slice(plain, start));
    pieces.push(reference);
    plain = end;
  };
  while (at < formula.length) {
    const end = wordEnd(formula, at);
    if (end > at) {
      const next = formula[end];
      const text = formula.slice(at, end);
      if (next !== "(" && next !== "!" && next !== "[") {
        const otherEnd = next === ":" ? wordEnd(formula, end + 1) : end;
        const half =
          otherEnd > end + 1 ? lineRange(text, formula.slice(end + 1, otherEnd)) : undefined;
        if (half !== undefined && formula[otherEnd] !== "(" && formula[otherEnd] !== "!") {
          push(at, end, half[0]);
          push(end + 1, otherEnd, half[1]);
          at = otherEnd;
          continue;
        }
        push(at, end, cellReference(text));
      }
      at = end;
    } else {
      at = passOver(formula, at);
    }
  }
  if (plain < formula.length) pieces.push(formula.slice(plain));
  return pieces;
}

/** Writes a formula out for a cell `rows` below and `columns` to the right of where it stands. */
export function shiftFormula(formula: CutFormula, rows: number, columns: number): string {
  // Joined at once: a string grown piece by piece takes several times its size in memory.
  return formula
    .map((piece) => (typeof piece === "string" ? piece : shifted(piece, rows, columns)))
    .join("");
}

/** How far `to` lies from `from`. */
export function distance(from: Position, to: Position): { rows: number; columns: number } {
  return { rows: to.row - from.row, columns: to.column - from.column };
}

function shifted({ column, row }: Reference, rows: number, columns: number): string {
  let text = "";
  if (column !== undefined) {
    const value = column.absolute ? column.value : column.value + columns;
    if (value < 1 || value > lastColumn) return "#REF!";
    text += (column.absolute ? "$" : "") + columnLetters(value);
  }
  if (row !== undefined) {
    const value = row.absolute ? row.value : row.value + rows;
    if (value < 1 || value > lastRow) return "#REF!";
    text += (row.absolute ? "$" : "") + value;
  }
  return text;
}

function cellReference(text: string): Reference | undefined {
  const match = cell.exec(text);
  if (match === null) return undefined;
  const column = columnNumber(match[2] as string);
  const row = Number(match[4]);
  // XFE1 and A1048577 are names, not cells.
  if (column > lastColumn || row > lastRow) return undefined;
  return {
    column: { value: column, absolute: match[1] === "$" },
    row: { value: row, absolute: match[3] === "$" },
  };
}

function lineRange(left: string, right: string): [Reference, Reference] | undefined {
  const columns = [wholeColumn.exec(left), wholeColumn.exec(right)];
  if (columns[0] && columns[1]) {
    const [from, to] = columns.map((match) => ({
      column: { value: columnNumber(match?.[2] as string), absolute: match?.[1] === "$" },
      row: undefined,
    })) as [Reference, Reference];
    return [from, to].every((side) => (side.column?.value ?? 0) <= lastColumn)
      ? [from, to]
      : undefined;
  }
  const rows = [wholeRow.exec(left), wholeRow.exec(right)];
  if (rows[0] && rows[1]) {
    return rows.map((match) => ({
      column: undefined,
      row: { value: Number(match?.[2]), absolute: match?.[1] === "$" },
    })) as [Reference, Reference];
  }
  return undefined;
}

function wordEnd(formula: string, at: number): number {
  word.lastIndex = at;
  return word.test(formula) ? word.lastIndex : at;
}

/** The end of a text, a quoted name or a bracket that begins here; otherwise the next character. */
function passOver(formula: string, at: number): number {
  const first = formula[at];
  if (first === '"' || first === "'") {
    const close = formula.indexOf(first, at + 1);
    return close === -1 ? formula.length : close + 1;
  }
  if (first !== "[") return at + 1;
  let depth = 0;
  for (let next = at; next < formula.length; next++) {
    if (formula[next] === "'") next++;
    else if (formula[next] === "[") depth++;
    else if (formula[next] === "]" && --depth === 0) return next + 1;
  }
  return formula.length;
}
