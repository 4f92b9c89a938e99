import { columnLetters } from "../../../address.js";
import type { Content, Look, Row, Sheet, SheetCell } from "../book/sheet.js";
import type { Styles } from "./styles.js";
import { cellText } from "./text.js";
import type { Texts } from "./texts.js";

/** What the sheets of a book share. */
export interface Shared {
  readonly styles: Styles;
  readonly texts: Texts;
}

/** Makes the element `sheetData` of a sheet. */
export type SpellCells = (sheet: Sheet, shared: Shared) => string;

/** The cells of a sheet, line by line (ISO/IEC 29500-1, 18.3.1.80). */
export function cellsXml(sheet: Sheet, shared: Shared): string {
  const letters = Array.from({ length: widest(sheet) + 1 }, (_, i) =>
    i === 0 ? "" : columnLetters(i),
  );
  let xml = "";
  for (const row of sheet.rows) {
    if (row !== undefined && isWritten(row)) xml += rowXml(row, letters, shared);
  }
  return xml === "" ? "<sheetData/>" : `<sheetData>${xml}</sheetData>`;
}

/** The lines of a sheet of which something is said, without their cells. */
export function linesXml({ rows }: Sheet): string {
  let xml = "";
  for (const row of rows) {
    if (row !== undefined && isWritten(row) && (row.height || row.hidden))
      xml += `${lineXml(row)}/>`;
  }
  return `<sheetData>${xml}</sheetData>`;
}

const lineXml = ({ line, height, hidden }: Row): string =>
  `<row r="${line}"${height ? ` ht="${height}" customHeight="1"` : ""}${hidden ? ' hidden="1"' : ""}`;

const widest = ({ rows }: Sheet): number =>
  rows.reduce((most, row) => Math.max(most, row === undefined ? 0 : row.cells.length - 1), 0);

/** A line of which nothing is said but that it is hidden is left out: nothing hangs on it. */
export const isWritten = ({ height, cells }: Row): boolean => Boolean(height) || cells.length > 0;

/** The first and last column of a line that were touched; none where no cell was. */
export function spanOf({ cells }: Row): readonly [number, number] | undefined {
  const first = cells.findIndex((cell) => cell !== undefined);
  return first < 0 ? undefined : [first, cells.length - 1];
}

function rowXml(row: Row, letters: readonly string[], shared: Shared): string {
  const { line, cells } = row;
  const span = spanOf(row);
  const said =
    lineXml(row) +
    `${span === undefined ? "" : ` spans="${span[0]}:${span[1]}"`} x14ac:dyDescent="0.25"`;
  let xml = "";
  for (let column = span?.[0] ?? 1; column < cells.length; column++) {
    const cell = cells[column];
    if (cell !== undefined) xml += cellXml(cell, `${letters[column]}${line}`, shared);
  }
  return xml === "" ? `${said}/>` : `${said}>${xml}</row>`;
}

function cellXml({ value, style }: SheetCell, address: string, { styles, texts }: Shared): string {
  const place = styles.placeOf(style);
  if (value === null && !showsEmpty(style)) return "";
  const open = place === 0 ? `<c r="${address}"` : `<c r="${address}" s="${place}"`;
  return open + contentXml(value, texts);
}

/** Does an empty cell show, or may it be typed into? Others are as well left out: a fifth of the cells of a bid. */
const showsEmpty = ({ border, fill, protection }: Look): boolean =>
  border !== undefined || fill !== undefined || protection?.locked === false;

/** What follows the name and look of a cell, to its end. */
function contentXml(value: Content, texts: Texts): string {
  if (value === null) return "/>";
  if (typeof value === "number") return `><v>${value}</v></c>`;
  if (typeof value === "string") return ` t="s"><v>${texts.placeOf(value)}</v></c>`;
  if (typeof value === "boolean") return ` t="b"><v>${value ? 1 : 0}</v></c>`;
  const { formula, result } = value;
  const said = `<f>${cellText(formula)}</f>`;
  if (typeof result === "number") return `>${said}<v>${result}</v></c>`;
  if (typeof result === "string") return ` t="str">${said}<v>${cellText(result)}</v></c>`;
  if (typeof result === "boolean") return ` t="b">${said}<v>${result ? 1 : 0}</v></c>`;
  return ` t="e">${said}<v>${result.error}</v></c>`;
}
