import type { Alignment, Style } from "exceljs";
import { RillbookError } from "../../errors.js";
import { CellError, type Value } from "../../formula/value.js";
import { cellTextTrouble } from "../../limits.js";
import type { Cell, Model } from "../../template/model.js";
import { xlsxFormula } from "../../template/printed.js";
import { workingsSheet } from "../../template/spread.js";
import type { Content, Formula, SheetCell } from "./book/sheet.js";
import { styles } from "./look.js";
import { numberFormat } from "./number-format.js";

/** Puts a model's cell into the workbook: its formula with the value cached, or its given value. */
export function putCell(target: SheetCell, model: Model, cell: Cell, value: Value): void {
  target.value = contentOf(model, cell, value);
  // a whole new object: cells given one style share it, and a change would show in all
  target.style = {
    ...styleOf(model, cell),
    alignment: alignmentOf(cell),
    numFmt: numberFormat(cell.declaration, model.system),
    protection: { locked: cell.declaration.kind !== "input" },
  };
}

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

function styleOf({ template }: Model, cell: Cell): Partial<Style> {
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
      // the two sums that a bid comes to; what else people look for is bold
      return [template.roles?.price, template.roles?.cost].includes(cell.name)
        ? styles.total
        : styles.strong;
  }
}
