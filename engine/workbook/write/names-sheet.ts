import { addressOf } from "../../address.js";
import { describeMeasure } from "../../formula/named-formula.js";
import type { Value } from "../../formula/value.js";
import type { Cell, Model } from "../../template/model.js";
import { spokenFormula } from "../../template/printed.js";
import type { Book } from "./book/book.js";
import { changed } from "./book/changed.js";
import type { Sheet } from "./book/sheet.js";
import { formulaContent } from "./cells.js";
import { styles, titleHeight } from "./look.js";
import { dayFormat, numberFormat, shownLabel, shownUnit } from "./number-format.js";
import { printNothing } from "./print-area.js";
import { linkBack } from "./tabs.js";

const widths = [34, 40, 16, 12, 70, 50];
const headings = ["Name", "Meaning", "Value", "Unit", "Formula", "Source"];

/** The last sheet: each name with its value, unit, formula and source; then the named formulas. */
export function writeNames(book: Book, model: Model, values: readonly Value[]): void {
  const sheet = book.addSheet("Names", { view: { frozenLines: 4, showGridLines: false } });
  writeHead(sheet);
  let line = 5;
  const unseen = new Set(model.sheets.flatMap(({ name, hidden }) => (hidden ? [name] : [])));
  for (const cell of namedCells(model)) {
    const isUnseen = unseen.has(cell.sheet);
    writeName(sheet, line, cell, model, isUnseen);
    // formulas for those that nobody looks at would only be weight
    if (cell.table === undefined && !isUnseen) writeValue(sheet, line, cell, model, values);
    line += 1;
  }
  writeNamedFormulas(sheet, line + 1, model);
  sheet.pageSetup = { orientation: "landscape", fitToPage: true, fitToWidth: 1, fitToHeight: 0 };
  linkBack(sheet, sheet.columnCount + 1);
  printNothing(sheet);
}

function writeHead(sheet: Sheet): void {
  widths.forEach((width, i) => {
    sheet.widths[i + 1] = width;
  });
  sheet.getCell(1, 1).value = "Names";
  sheet.getCell(1, 1).style = styles.sheetTitle;
  sheet.getRow(1).height = titleHeight;
  sheet.getCell(2, 1).value =
    "Every name: what it means, what it is and where it comes from. Of what stands on a hidden sheet: on which.";
  sheet.getCell(2, 1).style = styles.purpose;
  headings.forEach((text, i) => {
    sheet.getCell(4, i + 1).value = text;
    sheet.getCell(4, i + 1).style = styles.header;
  });
}

function writeRow(sheet: Sheet, line: number, texts: readonly (string | undefined)[]): void {
  texts.forEach((text, i) => {
    sheet.getCell(line, i + 1).value = text || null;
    sheet.getCell(line, i + 1).style = styles.note;
  });
}

function writeName(sheet: Sheet, line: number, cell: Cell, model: Model, isUnseen: boolean): void {
  writeRow(sheet, line, [
    cell.name,
    shownLabel(cell.declaration),
    isUnseen ? `on ${cell.sheet}` : undefined,
    shownUnit(cell.declaration, model.system),
    explained(cell),
    cell.declaration.source,
  ]);
}

/** What it is, by a formula of its name. */
function writeValue(
  sheet: Sheet,
  line: number,
  cell: Cell,
  model: Model,
  values: readonly Value[],
): void {
  const { declaration } = cell;
  const target = sheet.getCell(line, 3);
  const value = values[cell.index] ?? null;
  target.value =
    declaration.quantity.kind === "text"
      ? formulaContent(`${cell.name}&""`, value ?? "")
      : formulaContent(cell.name, value);
  const format = numberFormat(declaration, model.system);
  // a date that is not given is no day of 1899
  const numFmt = declaration.quantity.kind === "date" ? `${dayFormat};;` : format;
  target.style = changed(styles.note, { alignment: { vertical: "top" }, numFmt });
}

function writeNamedFormulas(sheet: Sheet, top: number, model: Model): void {
  sheet.getCell(top, 1).value = "Named formulas";
  sheet.getCell(top, 1).style = styles.heading;
  [...model.formulas.values()].forEach((own, i) => {
    const takes = own.parameters.map(
      ({ name, measure }) => `${name} (${describeMeasure(measure)})`,
    );
    writeRow(sheet, top + 1 + i, [
      own.name,
      own.meaning,
      undefined,
      describeMeasure(own.result),
      `${own.text}   with ${takes.join(", ")}`,
      own.source,
    ]);
  });
}

/** Single cells, and for each column of a table a row that shows the pattern (the second, where there is one). */
export function namedCells(model: Model): Cell[] {
  return model.cells.filter((cell) => {
    if (cell.implied || cell.declaration.beside) return false;
    if (cell.row === undefined) return true;
    const rows = model.tables.get(cell.table ?? "")?.block.rows ?? 1;
    return cell.row === Math.min(2, rows);
  });
}

function explained(cell: Cell): string {
  switch (cell.declaration.kind) {
    case "input":
      return `input, at ${cell.sheet} ${addressOf(cell.column, cell.line)}`;
    case "published":
      return "published figure";
    case "book":
      return "from the office book";
    default:
      return cell.spoken === undefined ? "words of the template" : `= ${spokenFormula(cell)}`;
  }
}
