import { addressOf } from "../../address.js";
import type {
  PanelBlock,
  PaperPlace,
  SheetDeclaration,
  TableBlock,
} from "../../template/declare.js";
import type { Cell, PlacedBlock } from "../../template/model.js";
import { columnOf } from "../../template/model.js";
import { type Across, type PaperTable, paperColumns } from "../../template/paper.js";
import type { Page } from "./blocks.js";
import { changed } from "./book/changed.js";
import type { Look } from "./book/sheet.js";
import { putContent } from "./cells.js";
import { pageWidth } from "./grid.js";
import { begins } from "./hidden-rows.js";
import { attention, headingLine, styles } from "./look.js";
import { numberFormat, shownLabel } from "./number-format.js";
import { paperLooks } from "./paper-look.js";
import { linesIn } from "./text-width.js";

/** A panel: each place over its columns and rows, each row at its height, or as its texts want it. */
export function writePanel(page: Page, { top }: PlacedBlock, block: PanelBlock): void {
  const { sheet } = page;
  if (block.newPage && top > 4 && !page.form) sheet.getRow(top - 1).addPageBreak();
  block.rows.forEach(({ height, places }, i) => {
    const line = top + i;
    const wanted = places.map((one) => writePlace(page, line, one));
    sheet.getRow(line).height = Math.max(height, ...wanted);
  });
}

/** Returns the height in points that its text wants, where it is of one row. */
function writePlace(page: Page, line: number, { across, look, says, cell, down = 1 }: PaperPlace) {
  const { sheet, model, values } = page;
  const target = sheet.getCell(line, across[0]);
  const style = paperLooks[look];
  let text = says ?? "";
  if (look === "photo" && text !== "") {
    target.note = text;
    text = "";
  } else if (cell === undefined) target.value = says ?? null;
  else {
    const found = model.byId.get(cell[0]) as Cell;
    const value = values[found.index] ?? null;
    putContent(target, model, found, value);
    text = typeof value === "string" ? value : "";
  }
  const format = cell === undefined ? {} : { numFmt: numberFormat(cell[1], model.system) };
  spread(page, line, across, changed(style, format), down);
  if (down > 1) return 0;
  return heightOf(text, across, style);
}

/** Points that a text wants over a stretch of the grid; programs keep a little of each cell for themselves. */
function heightOf(text: string, [, count]: Across, { font = {} }: Look): number {
  const { size = 10, bold = false } = font;
  const width = (pageWidth * 7 + 5) * 0.75 * (count / paperColumns) * 0.965 - 3.5;
  return linesIn(text, width, size, bold) * size * 1.18 + 2;
}

function spread({ sheet }: Page, line: number, [from, count]: Across, style: Look, down = 1): void {
  if (count > 1 || down > 1) sheet.mergeCells(line, from, line + down - 1, from + count - 1);
  for (let row = line; row < line + down; row++) {
    for (let column = from; column < from + count; column++) {
      sheet.getCell(row, column).style = style;
    }
  }
}

/** A table on paper: its rows one under another, each column over its stretch of the page. */
export function writePaperTable(
  page: Page,
  placed: PlacedBlock,
  block: TableBlock,
  paper: PaperTable,
): void {
  const { sheet, model, values } = page;
  const {
    across,
    header,
    right = [],
    height,
    headingMark,
    boldMark,
    alarmMark,
    size,
    ruled,
  } = paper;
  const isAiry = headingMark !== undefined && !ruled;
  const keys = placed.band?.columns ?? [];
  const columns = keys.map((key) => {
    const column = columnOf(model, block.name, key);
    const format = { numFmt: numberFormat(column.declaration, model.system) };
    const look = paperLooks[right.includes(key) ? "right" : "text"];
    const style = changed(look, {
      ...rowLook(look, size, ruled),
      ...(isAiry ? { alignment: middle } : {}),
      ...format,
    });
    return { over: across[key] as Across, style, column };
  });
  for (const { over, column } of columns) {
    if (!header) break;
    sheet.getCell(placed.top, over[0]).value = shownLabel(column.declaration);
    spread(page, placed.top, over, styles.header);
  }
  if (!header) sheet.getRow(placed.top).height = 4;
  for (let row = 0; row < block.rows; row++) {
    const line = placed.top + 1 + row;
    const heights = columns.map(({ over, style, column }) => {
      const cell = column.cells[row] as Cell;
      const value = values[cell.index] ?? null;
      putContent(sheet.getCell(line, over[0]), model, cell, value);
      spread(page, line, over, style);
      const said = typeof value === "string" ? value : "";
      const isBold = [boldMark, alarmMark].some(
        (mark) => mark !== undefined && said.startsWith(mark),
      );
      return heightOf(said, over, isBold ? { font: { ...style.font, bold: true } } : style);
    });
    sheet.getRow(line).height = Math.max(height ?? 0, ...heights) + (isAiry ? air : 0);
  }
  markLines(page, placed, block, paper);
  const { used, spare = spareLines } = paper;
  const count = used === undefined || begins(page) ? undefined : countIn(page, used);
  for (let row = Number(count) + spare; count !== undefined && row < block.rows; row++) {
    sheet.getRow(placed.top + 1 + row).hidden = true;
  }
}

/** Points that lines keep from what stands above and below them, together. */
const air = 2;
const middle = { vertical: "middle", wrapText: true } as const;

/** What the rows of a table change of a look: the size of type, and a fine rule below each. */
const rowLook = ({ font }: Look, size: number | undefined, ruled: true | undefined): Look => ({
  ...(size === undefined ? {} : { font: { ...font, size } }),
  ...(ruled ? { border: { bottom: fineRule } } : {}),
});

const fineRule = { style: "hair", color: { argb: "FF9AA8AB" } } as const;

/** Lines in sight below those in use, so that one or two that an edit adds show at once. */
const spareLines = 2;

/** A number, and of anything else none. */
function countIn({ model, values }: Page, name: string): number | undefined {
  const value = values[model.byId.get(name)?.index ?? -1];
  return typeof value === "number" ? value : undefined;
}

/** Headings, dangers, and boxes to write in, told by how a line begins. */
function markLines(
  { sheet }: Page,
  { top }: PlacedBlock,
  { rows }: TableBlock,
  { across, headingMark, boldMark, alarmMark, boxes }: PaperTable,
): void {
  const from = Object.values(across)[0]?.[0] ?? 1;
  const first = `$${addressOf(from, top + 1)}`;
  const starts = (mark: string) => `LEFT(${first},${mark.length})="${mark}"`;
  const area = (start: number, end: number) =>
    `${addressOf(start, top + 1)}:${addressOf(end, top + rows)}`;
  // boxes keep rules of their own: programs show one rule of several that lie on a cell
  const lastText = (boxes?.across[0]?.[0] ?? paperColumns + 1) - 1;
  const all = area(from, lastText);
  const [, width] = Object.values(across)[0] ?? [from, paperColumns];
  const firstColumn = area(from, Math.min(lastText, from + width - 1));
  if (headingMark !== undefined) {
    sheet.addConditionalFormatting({ ref: firstColumn, rules: [headingLine(starts(headingMark))] });
  }
  if (boldMark !== undefined) {
    sheet.addConditionalFormatting({ ref: firstColumn, rules: [bold(starts(boldMark))] });
  }
  if (alarmMark !== undefined) {
    sheet.addConditionalFormatting({ ref: all, rules: [attention(starts(alarmMark))] });
  }
  for (const [start, count] of boxes?.across ?? []) {
    sheet.addConditionalFormatting({
      ref: area(start, start + count - 1),
      rules: [boxed(starts(boxes?.mark ?? ""))],
    });
  }
}

const bold = (test: string) => ({
  type: "expression" as const,
  formulae: [test],
  priority: 7,
  style: { font: { bold: true } },
});

const boxed = (test: string) => {
  const line = { style: "thin", color: { argb: "FF7A8A8E" } } as const;
  return {
    type: "expression" as const,
    formulae: [test],
    priority: 6,
    style: { border: { top: line, left: line, bottom: line, right: line } },
  };
};

/**
 * Hides the pages that this job does not use, so that they take no paper. A page or a line that comes into
 * use by an edit and is hidden raises the alarm of the sheet: a page's count is then among the sum and
 * not among the sum of what is seen, and more lines are in use than rows are in sight.
 */
export function hideUnusedPages(page: Page, declared: SheetDeclaration): void {
  const { sheet, model, alarms } = page;
  const own = model.placed.filter((one) => one.sheet === declared.name);
  const counts: string[] = [];
  let hiding = false;
  for (const { block, top, bottom } of own) {
    if (block.kind === "panel" && block.newPage) {
      const count = model.byId.get(block.unlessZero ?? "");
      hiding = count !== undefined && !((countIn(page, count.id) ?? 0) > 0);
      if (count !== undefined) counts.push(addressOf(count.column, count.line));
    }
    if (block.kind === "table" && block.paper?.used !== undefined) {
      const from = Object.values(block.paper.across)[0]?.[0] ?? 1;
      const area = `${addressOf(from, top + 1)}:${addressOf(from, top + block.rows)}`;
      alarms.push(`${block.paper.used}>SUBTOTAL(103,${area})`);
    }
    for (let line = top; hiding && !begins(page) && line <= bottom; line++) {
      sheet.getRow(line).hidden = true;
    }
  }
  if (counts.length === 0) return;
  const all = counts.join(",");
  alarms.push(`ROUND(SUM(${all})-SUBTOTAL(109,${all}),6)<>0`);
}
