import { addressOf, columnLetters } from "../../address.js";
import { print } from "../../formula/print.js";
import type { Reference } from "../../formula/tree.js";
import { checkShown } from "../../template/checks-sheet.js";
import type { Block, CellDeclaration, TableBlock } from "../../template/declare.js";
import { messageName, overridden } from "../../template/implied-names.js";
import { noteOn } from "../../template/layout.js";
import type { Band, Cell, Column, Model, PlacedBlock } from "../../template/model.js";
import { columnOf } from "../../template/model.js";
import { tableShown, workingsSheet } from "../../template/spread.js";
import { decimalsIn } from "../../units/decimals.js";
import { type UnitSystem, unitOf } from "../../units/quantity.js";
import { areaOf } from "./area-of.js";
import { addValidation, type Page, writeHeading } from "./blocks.js";
import { putCell } from "./cells.js";
import { labelWidth, lastColumn } from "./grid.js";
import { hideRows } from "./hidden-rows.js";
import { attention, hidden, styles, wholeNumber } from "./look.js";
import { shownLabel, shownUnit } from "./number-format.js";
import { wrappedHeight } from "./text-width.js";

/** A table, or what of it stands here: headings, units, then a line for each row of its capacity. */
export function writeTable(
  page: Page,
  placed: PlacedBlock,
  { kind, heading }: Extract<Block, { kind: "table" | "part" }>,
): void {
  const block = tableShown(placed.block) as TableBlock;
  writeHeading(page, placed.top, heading);
  const note = noteOn(block, kind === "part" ? placed.sheet : undefined);
  if (note !== undefined) {
    page.sheet.mergeCells(placed.top + 1, 1, placed.top + 1, lastColumn);
    page.sheet.getCell(placed.top + 1, 1).value = note;
    page.sheet.getCell(placed.top + 1, 1).style = styles.note;
    const across = page.widths.slice(0, lastColumn);
    page.sheet.getRow(placed.top + 1).height = wrappedHeight(note, across, { size: 9 });
  }
  const { band } = placed;
  if (band === undefined) return;
  for (const key of band.columns) writeColumn(page, band, block, key);
  const last = columnOf(page.model, block.name, band.columns.at(-1) as string);
  const wide = widened(page, band, last);
  const widthsOf = ({ column }: Cell) =>
    page.widths.slice(column - 1, column === wide ? undefined : column);
  const cells = band.columns.map((key) => columnOf(page.model, block.name, key).cells);
  page.sheet.getRow(band.header).height = Math.max(
    ...cells.map(([cell]) =>
      wrappedHeight(
        shownLabel((cell as Cell).declaration),
        widthsOf(cell as Cell),
        styles.header.font,
      ),
    ),
  );
  const units = cells.map(([cell]) => shownUnit((cell as Cell).declaration, page.model.system));
  if (units.every((unit) => !unit)) page.sheet.getRow(band.header + 1).height = unitless;
  for (let row = 0; row < block.rows; row++) {
    const line = cells
      .map((column) => column[row] as Cell)
      .filter(({ column }) => column <= page.widest);
    fitHeight(page, line, widthsOf);
  }
  hideBlankRows(page, band, block);
  if (page.onPaper) hideRows(page, placed, block, band);
  if (block.name === checkShown) markStates(page, block);
}

/** Lets a message or a text at the end of a table take the columns that are left: from which one on. */
function widened(
  { sheet, widest }: Page,
  band: Band,
  { cells, declaration }: Column,
): number | undefined {
  const from = (cells[0] as Cell).column;
  const isText = declaration.quantity.kind === "text" && declaration.kind !== "input";
  if (!isText || from === 1 || from >= widest) return undefined;
  for (const line of [band.header, band.header + 1, ...cells.map((cell) => cell.line)]) {
    sheet.mergeCells(line, from, line, widest);
  }
  return from;
}

/** Points of the line of units below the headings, where no column has one. */
const unitless = 4;

/** Points of a line of text. */
const oneLine = wrappedHeight("", [labelWidth]);

/** A row of the table is as high as its longest text, as it is now, wants. */
function fitHeight(
  page: Page,
  cells: readonly Cell[],
  widthsOf: (cell: Cell) => readonly number[],
): void {
  const texts = cells.filter(
    ({ declaration, sheet }) => declaration.quantity.kind === "text" && sheet !== workingsSheet,
  );
  const heights = texts.map((cell) =>
    wrappedHeight(String(page.values[cell.index] ?? ""), widthsOf(cell)),
  );
  const height = Math.max(0, ...heights);
  // a line that needs no more keeps to the program's own height
  if (height > oneLine) page.sheet.getRow((cells[0] as Cell).line).height = height;
}

/** In the list of what does not hold, a failed check stands out, and rows that are not needed show nothing. */
function markStates({ sheet, model }: Page, block: TableBlock): void {
  const [first] = columnOf(model, block.name, "state").cells as [Cell];
  const state = `$${addressOf(first.column, first.line)}`;
  const area = `A${first.line}:${addressOf(lastColumn, first.line + block.rows - 1)}`;
  sheet.addConditionalFormatting({
    ref: area,
    rules: [attention(`${state}="stop"`), hidden(`${state}=""`)],
  });
}

function writeColumn(page: Page, band: Band, block: TableBlock, key: string): void {
  const { sheet, model, values } = page;
  const { cells, declaration } = columnOf(model, block.name, key);
  const column = (cells[0] as Cell).column;
  writeHeader(page, band, column, declaration);
  for (const cell of cells) {
    putCell(sheet.getCell(cell.line, cell.column), model, cell, values[cell.index] ?? null);
  }
  if (declaration.kind === "input") addValidation(page, areaOf(cells), declaration);
  if (mayBeWhole(declaration, model.system)) {
    const first = addressOf(column, (cells[0] as Cell).line);
    sheet.addConditionalFormatting({
      ref: areaOf(cells),
      rules: [wholeNumber(`ROUND(${first},0)=${first}`)],
    });
  }
  const message = declaration.kind === "check" ? messagesOf(page, block, key) : cells;
  if (message[0] !== undefined && isMessage(message[0])) {
    // by the message: LibreOffice 7.4 fails to print sheets whose rules look at yes/no cells
    const at = `$${addressOf(message[0].column, message[0].line)}`;
    const test = `AND(LEN(${at})>0,${at}<>"${overridden}")`;
    sheet.addConditionalFormatting({ ref: areaOf(cells), rules: [attention(test)] });
  }
}

/** Counts of things among measures: pieces beside yards. A column that asks for its decimals keeps to them. */
const mayBeWhole = ({ kind, quantity, decimals }: CellDeclaration, system: UnitSystem): boolean =>
  kind !== "check" &&
  decimals === undefined &&
  quantity.kind === "number" &&
  !quantity.percent &&
  unitOf(quantity, system).name === "" &&
  decimalsIn(quantity, system, decimals) > 0;

const messagesOf = ({ model }: Page, block: TableBlock, key: string): readonly Cell[] =>
  model.tables.get(block.name)?.columns.get(messageName(key))?.cells ?? [];

function writeHeader(
  { sheet, model }: Page,
  band: Band,
  column: number,
  declaration: CellDeclaration,
): void {
  const header = sheet.getCell(band.header, column);
  header.value = shownLabel(declaration);
  header.style = styles.header;
  const note = [declaration.note, declaration.source && `Source: ${declaration.source}`]
    .filter(Boolean)
    .join(" ");
  if (note !== "") header.note = note;
  const unit = sheet.getCell(band.header + 1, column);
  unit.value = shownUnit(declaration, model.system) || null;
  unit.style = styles.unitHeader;
}

/** Rows of the capacity that a job does not use show nothing. */
function hideBlankRows({ sheet, model }: Page, band: Band, block: TableBlock): void {
  const test = blankRowTest(model, block, sheet.name, band);
  if (test === undefined) return;
  // inputs keep their boxes, to be filled in, and messages are wanted most where a row is not in use
  const areas = band.columns
    .map((key) => columnOf(model, block.name, key).cells)
    .filter(([cell]) => cell?.declaration.kind !== "input" && !isMessage(cell as Cell))
    .map(areaOf);
  if (areas.length === 0) return;
  // the rule is written for the first row and moves down with the lines
  sheet.addConditionalFormatting({ ref: areas.join(" "), rules: [hidden(test)] });
}

/** What the compiler adds beside what it shows again. */
const isMessage = ({ implied, declaration }: Cell): boolean =>
  implied && declaration.repeats === undefined;

/** `NOT(...)` of the condition that a row is in use, written for the first row of a band. */
function blankRowTest(
  model: Model,
  block: TableBlock,
  sheet: string,
  band: Band,
): string | undefined {
  const table = model.tables.get(block.name);
  if (table?.filled === undefined) return undefined;
  const reference = (to: Reference): string => {
    if (to.kind === "scalar") return to.name;
    if (to.kind === "area") throw new Error(`Table ${block.name}: a row is in use by its inputs.`);
    if (to.kind === "column") return `${to.table}.${to.column}`;
    const { cells } = columnOf(model, to.table, to.column);
    const cell = cells[0] as Cell;
    if (cells.length === 1) return `${to.table}.${to.column}`;
    if (cell.sheet === sheet) return `$${columnLetters(cell.column)}${cell.line}`;
    // rules of a sheet look at other sheets through names only; a row is counted from the units above the first
    return `INDEX(${to.table}.${to.column},ROW()-ROW($A$${band.header + 1}))`;
  };
  const style = { prefixed: true, exponent: "E", quotes: "doubled", reference } as const;
  return `NOT(${print(table.filled.native, style)})`;
}
