import { print } from "../../formula/print.js";
import type { Reference } from "../../formula/tree.js";
import type { CellDeclaration, TableBlock } from "../../template/declare.js";
import { messageName } from "../../template/implied.js";
import { addressOf, columnLetters } from "../../template/layout.js";
import type { Band, Cell, Model, PlacedBlock } from "../../template/model.js";
import { columnOf } from "../../template/model.js";
import { addValidation, type Page, writeHeading } from "./blocks.js";
import { formulaContent, putCell } from "./cells.js";
import { columnWidth, labelWidth, lastColumn, textHeight } from "./grid.js";
import { attention, hidden, styles } from "./look.js";
import { shownUnit } from "./number-format.js";

/** A table in its bands: headings, units, then a line for each row of its capacity. */
export function writeTable(page: Page, placed: PlacedBlock, block: TableBlock): void {
  writeHeading(page, placed.top, block.heading);
  if (block.note !== undefined) {
    page.sheet.mergeCells(placed.top + 1, 1, placed.top + 1, lastColumn);
    page.sheet.getCell(placed.top + 1, 1).value = block.note;
    page.sheet.getCell(placed.top + 1, 1).style = styles.note;
    page.sheet.getRow(placed.top + 1).height = textHeight(block.note, 150);
  }
  const first = placed.bands[0]?.columns[0] as string;
  for (const band of placed.bands) {
    if (band.repeats) writeRepeat(page, band, block, first);
    for (const key of band.columns) writeColumn(page, band, block, key);
    const labels = band.columns.map((key) => (block.columns[key] as CellDeclaration).label);
    page.sheet.getRow(band.header).height = Math.max(
      ...labels.map((label, i) =>
        textHeight(label, i === 0 && !band.repeats ? labelWidth : columnWidth - 2),
      ),
    );
    hideBlankRows(page, band, block);
  }
}

function writeColumn(page: Page, band: Band, block: TableBlock, key: string): void {
  const { sheet, model, values } = page;
  const { cells, declaration } = columnOf(model, block.name, key);
  const column = (cells[0] as Cell).column;
  writeHeader(page, band, column, declaration);
  for (const cell of cells) {
    putCell(sheet.getCell(cell.line, cell.column), model, cell, values[cell.index] ?? null);
    if (declaration.kind === "input") addValidation(page, cell, declaration);
  }
  const message = declaration.kind === "check" ? messagesOf(page, block, key) : cells;
  if (message[0]?.implied) {
    // by the message: LibreOffice 7.4 fails to print sheets whose rules look at yes/no cells
    const test = `LEN($${addressOf(message[0].column, message[0].line)})>0`;
    sheet.addConditionalFormatting({ ref: areaOf(cells), rules: [attention(test)] });
  }
}

const messagesOf = ({ model }: Page, block: TableBlock, key: string): readonly Cell[] =>
  columnOf(model, block.name, messageName(key)).cells;

function writeHeader(
  { sheet, model }: Page,
  band: Band,
  column: number,
  declaration: CellDeclaration,
): void {
  const header = sheet.getCell(band.header, column);
  header.value = declaration.label;
  header.style = styles.header;
  const note = [declaration.note, declaration.source && `Source: ${declaration.source}`]
    .filter(Boolean)
    .join(" ");
  if (note !== "") header.note = note;
  const unit = sheet.getCell(band.header + 1, column);
  unit.value = shownUnit(declaration, model.system) || null;
  unit.style = styles.unitHeader;
}

/** Further bands show again what heads each row, by reference. */
function writeRepeat(page: Page, band: Band, block: TableBlock, first: string): void {
  const { sheet, model, values } = page;
  const { cells, declaration } = columnOf(model, block.name, first);
  writeHeader(page, band, 1, declaration);
  for (const cell of cells) {
    const target = sheet.getCell(band.header + 1 + (cell.row ?? 0), 1);
    const value = values[cell.index] ?? null;
    const from = addressOf(cell.column, cell.line);
    const isText = declaration.quantity.kind === "text";
    // an empty text cell referred to would show as zero
    target.value = isText
      ? formulaContent(`${from}&""`, value ?? "")
      : formulaContent(from, value ?? 0);
    target.style = { ...styles.figure };
  }
}

/** Rows of the capacity that a job does not use show nothing. */
function hideBlankRows({ sheet, model }: Page, band: Band, block: TableBlock): void {
  const test = blankRowTest(model, block);
  if (test === undefined) return;
  const cells = band.columns.flatMap((key) => columnOf(model, block.name, key).cells);
  const left = band.repeats ? 1 : (cells[0] as Cell).column;
  const right = Math.max(...cells.map(({ column }) => column));
  const top = band.header + 2;
  const bottom = band.header + 1 + block.rows;
  // the rule is written for the first row and moves down with the lines
  sheet.addConditionalFormatting({
    ref: `${addressOf(left, top)}:${addressOf(right, bottom)}`,
    rules: [hidden(test)],
  });
}

/** `NOT(...)` of the condition that a row is in use, written for the first row. */
function blankRowTest(model: Model, block: TableBlock): string | undefined {
  const sample = [...(model.tables.get(block.name)?.columns.values() ?? [])]
    .flatMap(({ cells }) => cells)
    .find(({ native, row }) => native?.kind === "call" && native.name === "IF" && row === 1);
  if (block.filled === undefined || sample?.native?.kind !== "call") return undefined;
  const condition = sample.native.args[0];
  if (condition === undefined) return undefined;
  const reference = (to: Reference): string => {
    if (to.kind === "scalar") return to.name;
    if (to.kind === "column") return `${to.table}.${to.column}`;
    const cell = columnOf(model, to.table, to.column).cells[0] as Cell;
    const prefix = cell.sheet === sample.sheet ? "" : `'${cell.sheet}'!`;
    return `${prefix}$${columnLetters(cell.column)}${cell.line}`;
  };
  const style = { prefixed: true, exponent: "E", quotes: "doubled", reference } as const;
  return `NOT(${print(condition, style)})`;
}

const areaOf = (cells: readonly Cell[]): string => {
  const [first, last] = [cells[0] as Cell, cells.at(-1) as Cell];
  return `${addressOf(first.column, first.line)}:${addressOf(last.column, last.line)}`;
};
