import { addressOf } from "../../../address.js";
import type { Merge, PageSetup, Sheet, View } from "../book/sheet.js";
import { cellsXml, isWritten, type Shared, type SpellCells, spanOf } from "./cells.js";
import { conditionalsXml, validationsXml } from "./rules.js";
import { content, head } from "./text.js";

const spaces =
  'xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main" xmlns:r="http://schemas.openxmlformats.org/officeDocument/2006/relationships" ' +
  'xmlns:mc="http://schemas.openxmlformats.org/markup-compatibility/2006" mc:Ignorable="x14ac" xmlns:x14ac="http://schemas.microsoft.com/office/spreadsheetml/2009/9/ac"';

/** Locked but for the inputs, without a password; columns and rows may be made wider and higher. */
const protection = '<sheetProtection sheet="1" formatColumns="0" formatRows="0"/>';

/** Points of a line that programs use of themselves. */
const programsRowHeight = 15;

/** The parts that belong to a sheet, by the ids of its relations. */
export interface Links {
  readonly drawing: string | undefined;
  readonly noteBoxes: string | undefined;
}

/**
 * A sheet as the standard orders its elements (ISO/IEC 29500-1, 18.3.1.99).
 * @param spellCells makes its element `sheetData`
 */
export function worksheetXml(
  sheet: Sheet,
  shared: Shared,
  links: Links,
  spellCells: SpellCells = cellsXml,
): string {
  const { options, view, pageSetup, footer } = sheet;
  const cells = spellCells(sheet, shared);
  return (
    `${head}<worksheet ${spaces}>${propertiesXml(sheet)}<dimension ref="${dimensionOf(sheet)}"/>` +
    viewXml(view) +
    rowFormatXml(options.defaultRowHeight ?? programsRowHeight) +
    columnsXml(sheet.widths) +
    cells +
    protection +
    mergesXml(sheet.merges) +
    conditionalsXml(sheet.conditionals, shared.styles) +
    validationsXml(sheet.validations) +
    pageXml(pageSetup) +
    (footer === undefined
      ? ""
      : `<headerFooter><oddFooter>${content(footer)}</oddFooter></headerFooter>`) +
    breaksXml(sheet.pageBreaks) +
    (links.drawing === undefined ? "" : `<drawing r:id="${links.drawing}"/>`) +
    (links.noteBoxes === undefined ? "" : `<legacyDrawing r:id="${links.noteBoxes}"/>`) +
    "</worksheet>"
  );
}

function propertiesXml({ options: { tabColor }, pageSetup }: Sheet): string {
  const color = tabColor === undefined ? "" : `<tabColor rgb="${tabColor}"/>`;
  const fits = pageSetup.fitToPage ? '<pageSetUpPr fitToPage="1"/>' : "";
  return color + fits === "" ? "" : `<sheetPr>${color}${fits}</sheetPr>`;
}

/** The stretch of cells in which something stands. */
function dimensionOf({ rows }: Sheet): string {
  const written = rows.filter((row) => row !== undefined && isWritten(row));
  const spans = written.flatMap((row) => (row === undefined ? [] : [spanOf(row) ?? []]));
  const [first, last] = [written[0]?.line ?? 1, written.at(-1)?.line ?? 1];
  const columns = spans.flat();
  const left = Math.min(...columns.filter((one) => one > 0));
  return `${addressOf(left, first)}:${addressOf(Math.max(...columns), last)}`;
}

function viewXml(view: View | undefined): string {
  if (view === undefined) return "";
  const { frozenLines, showGridLines } = view;
  const open = `<sheetViews><sheetView workbookViewId="0"${showGridLines === false ? ' showGridLines="0"' : ""}`;
  if (frozenLines === undefined) return `${open}/></sheetViews>`;
  const pane = `<pane ySplit="${frozenLines}" topLeftCell="A${frozenLines + 1}" activePane="bottomLeft" state="frozen"/>`;
  return `${open}>${pane}<selection pane="bottomLeft"/></sheetView></sheetViews>`;
}

const rowFormatXml = (height: number): string =>
  `<sheetFormatPr defaultRowHeight="${height}" outlineLevelRow="0" outlineLevelCol="0" x14ac:dyDescent="55"${height === programsRowHeight ? "" : ' customHeight="1"'}/>`;

/** Columns of one width, side by side, are told together. */
function columnsXml(widths: readonly (number | undefined)[]): string {
  const stretches: { from: number; to: number; width: number }[] = [];
  widths.forEach((width, column) => {
    if (width === undefined) return;
    const last = stretches.at(-1);
    if (last?.to === column - 1 && last.width === width) last.to = column;
    else stretches.push({ from: column, to: column, width });
  });
  const said = stretches.map(
    ({ from, to, width }) => `<col min="${from}" max="${to}" width="${width}" customWidth="1"/>`,
  );
  return said.length === 0 ? "" : `<cols>${said.join("")}</cols>`;
}

function mergesXml(merges: readonly Merge[]): string {
  if (merges.length === 0) return "";
  const inTurn = [...merges].sort((a, b) => a.top - b.top || a.left - b.left);
  const said = inTurn.map(
    ({ top, left, bottom, right }) =>
      `<mergeCell ref="${addressOf(left, top)}:${addressOf(right, bottom)}"/>`,
  );
  return `<mergeCells count="${merges.length}">${said.join("")}</mergeCells>`;
}

function pageXml(setup: PageSetup): string {
  const { margins, orientation, scale, fitToWidth, fitToHeight, firstPageNumber } = setup;
  const said = (name: string, value: number | undefined) =>
    value === undefined ? "" : ` ${name}="${value}"`;
  const sides = ["left", "right", "top", "bottom", "header", "footer"] as const;
  return (
    (setup.centered ? '<printOptions horizontalCentered="1"/>' : "") +
    (margins === undefined
      ? ""
      : `<pageMargins${sides.map((side) => said(side, margins[side])).join("")}/>`) +
    `<pageSetup orientation="${orientation}"${said("scale", scale)}${said("fitToWidth", fitToWidth)}${said("fitToHeight", fitToHeight)}` +
    `${said("firstPageNumber", firstPageNumber)}${firstPageNumber === undefined ? "" : ' useFirstPageNumber="1"'}/>`
  );
}

function breaksXml(lines: readonly number[]): string {
  if (lines.length === 0) return "";
  const said = lines.map((line) => `<brk id="${line}" max="16838" man="1"/>`);
  return `<rowBreaks count="${lines.length}" manualBreakCount="${lines.length}">${said.join("")}</rowBreaks>`;
}
