import type { Alignment, Style } from "exceljs";
import { RillbookError } from "../../errors.js";
import { CellError, type Value } from "../../formula/value.js";
import { cellTextTrouble } from "../../limits.js";
import type { CellDeclaration } from "../../template/declare.js";
import type { Cell, Model } from "../../template/model.js";
import { xlsxFormula } from "../../template/printed.js";
import { workingsSheet } from "../../template/spread.js";
import type { Content, Formula, Look, SheetCell } from "./book/sheet.js";
import { styles } from "./look.js";
import { numberFormat } from "./number-format.js";

/** Puts a model's cell into the workbook: its formula with the value cached, or its given value. */
export function putCell(target: SheetCell, model: Model, cell: Cell, value: Value): void {
  putContent(target, model, cell, value);
  target.style = lookOf(model, cell);
}

/** The same for a place that has a look of its own. */
export function putContent(target: SheetCell, model: Model, cell: Cell, value: Value): void {
  target.value = contentOf(model, cell, value);
}

const looks = new WeakMap<CellDeclaration, Map<string, Look>>();

/** The look of a cell, made once for all cells of a declaration that stand alike. */
function lookOf(model: Model, cell: Cell): Look {
  const { declaration, implied, table, sheet } = cell;
  const where = `${table === undefined} ${sheet === workingsSheet}`;
  const key = `${model.system} ${implied} ${where} ${isSum(model, cell)}`;
  const known = looks.get(declaration) ?? new Map<string, Look>();
  looks.set(declaration, known);
  const look = known.get(key) ?? {
    ...fitted(styleOf(model, cell), declaration),
    alignment: alignmentOf(cell),
    numFmt: numberFormat(declaration, model.system),
    protection: { locked: declaration.kind !== "input" },
  };
  known.set(key, look);
  return look;
}

/** A day with its month in letters is a little longer than a column is wide. */
const fitted = (style: Partial<Style>, { quantity }: CellDeclaration): Partial<Style> =>
  quantity.kind === "date" ? { ...style, font: { ...style.font, size: 8.5 } } : style;

/** One of the two sums that a bid comes to. */
const isSum = ({ template: { roles } }: Model, { name }: Cell): boolean =>
  name === roles?.price || name === roles?.cost;

/** Numbers keep off what stands to their right; texts in tables take a further line where they must. */
function alignmentOf({ declaration, implied, table, sheet }: Cell): Partial<Alignment> {
  if (declaration.quantity.kind !== "text") {
    // a date takes the width of its column
    const indent = declaration.quantity.kind === "date" ? 0 : 1;
    return { vertical: "top", horizontal: "right", indent };
  }
  const wrapText = sheet !== workingsSheet && (implied || table !== undefined);
  return { vertical: "top", wrapText };
}

function contentOf(model: Model, cell: Cell, value: Value): Content {
  const trouble = typeof value === "string" ? cellTextTrouble(value) : undefined;
  if (trouble !== undefined) {
    throw new RillbookError(
      "cell-text-too-long",
      `The text of ${cell.id} (sheet ${cell.sheet}) ${trouble}. Shorten the inputs that it is made of.`,
    );
  }
  if (cell.native === undefined) return value instanceof CellError ? null : value;
  return formulaContent(xlsxFormula(model, cell), value);
}

/** A formula with its cached result; NaN and infinities would make a file that needs repair. */
export function formulaContent(formula: string, value: Value): Formula {
  if (value instanceof CellError) {
    const error = value.code === "#CYCLE!" ? "#REF!" : value.code;
    return { formula, result: { error } };
  }
  if (typeof value === "number" && !Number.isFinite(value)) {
    throw new Error(`The value of ${formula} is not a number that a file can hold.`);
  }
  return { formula, result: value ?? 0 };
}

function styleOf(model: Model, cell: Cell): Partial<Style> {
  const { declaration } = cell;
  if (cell.implied && declaration.repeats === undefined) return styles.message;
  if (declaration.beside && declaration.kind === "calc") return styles.message;
  switch (declaration.kind) {
    case "input":
      return styles.input;
    case "book":
      return styles.book;
    case "published":
      return styles.published;
    case "check":
      return styles.check;
    default:
      if (!declaration.strong) return styles.figure;
      // what else people look for is bold
      return isSum(model, cell) ? styles.total : styles.strong;
  }
}
