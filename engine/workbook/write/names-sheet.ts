import { addressOf } from "../../address.js";
import { describeMeasure } from "../../formula/named-formula.js";
import type { Value } from "../../formula/value.js";
import type { Cell, Model } from "../../template/model.js";
import { spokenFormula } from "../../template/printed.js";
import type { Book } from "./book/book.js";
import { changed } from "./book/changed.js";
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
  widths.forEach((width, i) => {
    sheet.widths[i + 1] = width;
  });
  sheet.getCell(1, 1).value = "Names";
  sheet.getCell(1, 1).style = styles.sheetTitle;
  sheet.getRow(1).height = titleHeight;
  sheet.getCell(2, 1).value =
    "Every name: what it means, what it is and where it comes from. Of what stands on a hidden sheet: on which.";
  sheet.getCell(2, 1).style = styles.purpose;
  const row = (line: number, texts: readonly (string | undefined)[]) => {
    texts.forEach((text, i) => {
      sheet.getCell(line, i + 1).value = text || null;
      sheet.getCell(line, i + 1).style = styles.note;
    });
  };
  const header = (line: number) => {
    headings.forEach((text, i) => {
      sheet.getCell(line, i + 1).value = text;
      sheet.getCell(line, i + 1).style = styles.header;
    });
  };
  header(4);
  let line = 5;
  const unseen = new Set(model.sheets.flatMap(({ name, hidden }) => (hidden ? [name] : [])));
  for (const cell of namedCells(model)) {
    const { declaration } = cell;
    // formulas for those that nobody looks at would only be weight
    const isUnseen = unseen.has(cell.sheet);
    const unit = shownUnit(declaration, model.system);
    row(line, [
      cell.name,
      shownLabel(declaration),
      isUnseen ? `on ${cell.sheet}` : undefined,
      unit,
      explained(cell),
      declaration.source,
    ]);
    if (cell.table === undefined && !isUnseen) {
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
    line += 1;
  }
  line += 1;
  sheet.getCell(line, 1).value = "Named formulas";
  sheet.getCell(line, 1).style = styles.heading;
  line += 1;
  for (const own of model.formulas.values()) {
    const takes = own.parameters.map(
      ({ name, measure }) => `${name} (${describeMeasure(measure)})`,
    );
    row(line, [
      own.name,
      own.meaning,
      undefined,
      describeMeasure(own.result),
      `${own.text}   with ${takes.join(", ")}`,
      own.source,
    ]);
    line += 1;
  }
  sheet.pageSetup = { orientation: "landscape", fitToPage: true, fitToWidth: 1, fitToHeight: 0 };
  linkBack(sheet, sheet.columnCount + 1);
  printNothing(sheet);
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
