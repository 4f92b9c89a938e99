import { addressOf } from "../../address.js";
import type { Value } from "../../formula/value.js";
import type {
  InputDeclaration,
  LinesBlock,
  ProseBlock,
  TextBlock,
} from "../../template/declare.js";
import { copyName, messageName, overridden, statusName } from "../../template/implied-names.js";
import { lineColumns } from "../../template/layout.js";
import type { Cell, Model, PlacedBlock } from "../../template/model.js";
import { paperColumns } from "../../template/paper.js";
import { changed } from "./book/changed.js";
import type { Look, Sheet } from "./book/sheet.js";
import { putCell } from "./cells.js";
import { lastColumn, pageLineHeight } from "./grid.js";
import { attention, headingLine, styles } from "./look.js";
import { shownLabel, shownUnit } from "./number-format.js";
import { wrappedHeight } from "./text-width.js";
import { validationOf } from "./validation.js";

/** What the block writers share. */
export interface Page {
  readonly model: Model;
  readonly values: readonly Value[];
  readonly sheet: Sheet;
  /** A page for people outside the office, on a grid of narrow columns. */
  readonly portrait: boolean;
  /** The last column of the page. */
  readonly widest: number;
  /** The width of each column, in digits. */
  readonly widths: readonly number[];
  /** A form, filled in by hand: sources stand on the sheet of names alone. */
  readonly form: boolean;
  /** In sight: what it does not need takes no height. */
  readonly onPaper: boolean;
  /** Conditions, as formulas, under which a hidden row has come into use. */
  readonly alarms: string[];
}

export function writeHeading({ sheet, portrait }: Page, line: number, heading: string): void {
  for (let column = 1; column <= (portrait ? paperColumns : lastColumn); column++) {
    sheet.getCell(line, column).style = styles.heading;
  }
  sheet.getCell(line, 1).value = heading;
  sheet.getRow(line).height = 20;
}

/** Label, value, unit; then the message beside inputs and checks, and the note. */
export function writeLines(page: Page, placed: PlacedBlock, block: LinesBlock): void {
  writeHeading(page, placed.top, block.heading);
  for (const name of Object.keys(block.cells)) writeLine(page, cellNamed(page, name));
}

function writeLine(page: Page, cell: Cell): void {
  const { sheet, model, values } = page;
  const { declaration, line } = cell;
  const strong = declaration.kind === "calc" && declaration.strong;
  const label = sheet.getCell(line, lineColumns.label);
  label.value = shownLabel(declaration);
  label.style = strong ? styles.strongLabel : styles.label;
  const target = sheet.getCell(line, lineColumns.value);
  putCell(target, model, cell, values[cell.index] ?? null);
  if (declaration.kind === "input") addValidation(page, addressIn(cell), declaration);
  const heights = [
    wrappedHeight(shownLabel(declaration), over(page, 1, 1), { bold: strong === true }),
  ];
  if (declaration.quantity.kind === "text") {
    // words take the place of the unit, too, and a sentence that of the note where there is none
    const isSaid = declaration.kind === "calc" && declaration.note === undefined;
    const last = isSaid ? lastColumn : lineColumns.unit;
    sheet.mergeCells(line, lineColumns.value, line, last);
    target.style = changed(target.style, { alignment: { vertical: "top", wrapText: true } });
    const text = String(values[cell.index] ?? "");
    heights.push(
      wrappedHeight(text, over(page, lineColumns.value, last), { bold: strong === true }),
    );
  }
  const unit = sheet.getCell(line, lineColumns.unit);
  if (declaration.quantity.kind !== "text") {
    unit.value = shownUnit(declaration, model.system) || null;
    unit.style = styles.unit;
  }
  const messageWidth = writeMessage(page, cell) + writeBeside(page, cell);
  const note = [declaration.note, page.form ? undefined : sourceOf(cell)].filter(Boolean).join(" ");
  const noteColumn = lineColumns.message + messageWidth;
  if (note !== "" && noteColumn <= page.widest) {
    sheet.mergeCells(line, noteColumn, line, page.widest);
    sheet.getCell(line, noteColumn).value = note;
    sheet.getCell(line, noteColumn).style = styles.note;
    heights.push(wrappedHeight(note, over(page, noteColumn, page.widest), { size: 9 }));
  }
  if (declaration.kind === "check") heights.push(messageHeight(page, cell));
  sheet.getRow(line).height = Math.max(...heights);
}

/** The widths of the columns from one to another. */
const over = ({ widths }: Page, from: number, to: number): readonly number[] =>
  widths.slice(from - 1, to);

/** Writes what the office book says of an input, where it is asked of the office; returns how many columns it takes. */
function writeBeside({ sheet, model, values }: Page, { name, line }: Cell): number {
  const cell = model.byId.get(copyName(name));
  if (cell === undefined) return 0;
  const target = sheet.getCell(line, cell.column);
  putCell(target, model, cell, values[cell.index] ?? null);
  // a long text stays in its line: it is there to be compared
  const alignment = { ...target.style.alignment, wrapText: false };
  target.style = changed(target.style, { alignment });
  return 1;
}

const sourceOf = ({ declaration }: Cell): string | undefined =>
  declaration.source === undefined ? undefined : `Source: ${declaration.source}`;

/** Writes the implied message, if the cell has one; returns how many columns it takes. */
function writeMessage(page: Page, cell: Cell): number {
  const { sheet, model, values } = page;
  const { kind } = cell.declaration;
  const implied = model.byId.get(kind === "check" ? messageName(cell.name) : statusName(cell.name));
  if (implied === undefined || !implied.implied) return kind === "input" ? 2 : 0;
  const width = kind === "check" ? lastColumn - lineColumns.message + 1 : 2;
  sheet.mergeCells(cell.line, implied.column, cell.line, implied.column + width - 1);
  const target = sheet.getCell(cell.line, implied.column);
  putCell(target, model, implied, values[implied.index] ?? null);
  // by the message: LibreOffice 7.4 fails to print sheets whose rules look at yes/no cells
  const test =
    kind === "check"
      ? `${target.address}<>"ok"`
      : `AND(LEN(${target.address})>0,${target.address}<>"${overridden}")`;
  sheet.addConditionalFormatting({ ref: target.address, rules: [attention(test)] });
  if (kind === "check") {
    sheet.addConditionalFormatting({ ref: addressIn(cell), rules: [attention(test)] });
  }
  return width;
}

/** Of what a check says now. */
function messageHeight(page: Page, { name }: Cell): number {
  const message = page.values[page.model.byId.get(messageName(name))?.index as number];
  const widths = over(page, lineColumns.message, lastColumn);
  return wrappedHeight(String(message ?? ""), widths, { size: 9, bold: true });
}

const addressIn = ({ column, line }: Cell): string => addressOf(column, line);

/** One rule for the whole area. */
export function addValidation(page: Page, area: string, declaration: InputDeclaration): void {
  const validation = validationOf(declaration, page.model.system);
  if (validation !== undefined) page.sheet.validations.set(area, validation);
}

/** Lines of text made by formulas, over the whole width of the page; a marked one is a heading. */
export function writeProse(page: Page, placed: PlacedBlock, block: ProseBlock): void {
  const { sheet, model, values } = page;
  // prose that goes on below a drawing has no heading of its own
  if (block.heading !== "") writeHeading(page, placed.top, block.heading);
  const names = Object.keys(block.cells);
  for (const name of names) {
    const cell = cellNamed(page, name);
    const value = values[cell.index] ?? null;
    putCell(sheet.getCell(cell.line, 1), model, cell, value);
    stretch(page, cell.line, String(value ?? ""), styles.prose);
  }
  const { headingMark } = block;
  if (headingMark === undefined) return;
  const top = placed.top + 1;
  const area = `A${top}:A${placed.top + names.length}`;
  sheet.addConditionalFormatting({
    ref: area,
    rules: [headingLine(`LEFT(A${top},${headingMark.length})="${headingMark}"`)],
  });
}

/** Standing text, marked as a caution. */
export function writeText(page: Page, placed: PlacedBlock, block: TextBlock): void {
  writeHeading(page, placed.top, block.heading);
  block.paragraphs.forEach((paragraph, i) => {
    const line = placed.top + 1 + i;
    page.sheet.getCell(line, 1).value = paragraph;
    stretch(page, line, paragraph, styles.caution);
  });
}

/**
 * Lets a text take the whole width. Spreadsheets do not fit the height of merged
 * cells, nor that of formulas as they load, so the height is set here.
 */
function stretch(page: Page, line: number, text: string, style: Look) {
  const { sheet, portrait } = page;
  sheet.mergeCells(line, 1, line, portrait ? paperColumns : lastColumn);
  sheet.getRow(line).height = portrait
    ? pageLineHeight(text)
    : wrappedHeight(text, over(page, 1, lastColumn), style.font) + 2;
  sheet.getCell(line, 1).style = style;
}

function cellNamed({ model }: Page, name: string): Cell {
  return model.byId.get(name) as Cell;
}
