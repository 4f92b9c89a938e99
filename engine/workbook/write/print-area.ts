import { columnLetters } from "../../address.js";
import { checkShown } from "../../template/checks-sheet.js";
import type { SheetDeclaration } from "../../template/declare.js";
import { chartLines } from "../../template/layout.js";
import { columnOf, type PlacedBlock } from "../../template/model.js";
import type { Page } from "./blocks.js";
import { isFilled, type Row, type Sheet } from "./book/sheet.js";
import { lastColumn, paper, paperFor, paperScale, scaleFor } from "./grid.js";
import { begins } from "./hidden-rows.js";

/** Rows that may still be filled after writing, before the next page is counted in. */
const spareRows = 8;
/** Points of a line in the type of the sheets, where none is set. */
export const usualHeight = 13;

/** The least of a table or list that is worth beginning at the foot of a page. */
const leastBegun = 6;

/** Lines that belong together: a list, a table, a chart. */
interface Part {
  readonly from: number;
  readonly to: number;
  readonly whole: boolean;
  /** It begins a page, where the sheet keeps to its pages so. */
  readonly newPage: boolean;
}

/**
 * Sets what of a sheet is printed and where its pages end: headings stay with what they head,
 * charts stay whole, working lists are left out. A sheet handed out ends with the page on which
 * its last line stands, so that a line that an edit adds is printed too.
 */
export function setPrint(page: Page, declared: SheetDeclaration): void {
  const { sheet, portrait, widest, widths, model, values } = page;
  const awaited = model.byId.get(declared.printedOnce ?? "");
  const isAwaited = awaited !== undefined && !(Number(values[awaited.index] ?? 0) > 0);
  if (declared.printed === false || declared.hidden || isAwaited) {
    printNothing(sheet);
    return;
  }
  const own = page.model.placed.filter(({ sheet: name }) => name === declared.name);
  const printed = own.slice(0, own.findLastIndex(isPrinted) + 1);
  if (portrait) closeUpCharts(sheet, own);
  else if (declared.formPages === undefined) closeUp(sheet, own);
  const bottom = printed.at(-1)?.bottom ?? sheet.rowCount;
  if (declared.formPages !== undefined) {
    setForm(page, printed.map(partOf), declared.formPages, bottom);
    return;
  }
  const paged = own.some(({ block }) => block.kind === "panel" && block.unlessZero !== undefined);
  const pages = portrait
    ? fewestPages(sheet, headed(printed), {
        usual: paperScale,
        least: paged ? paperScale : leastHandedOut,
        high: paper.upright.high,
        first: firstOnPaper,
        left: 14,
      })
    : fewestPages(sheet, printed.map(partOf), {
        usual: scaleFor(widths),
        least: Math.max(leastLegible, Math.ceil(scaleFor(widths) * leastShare)),
        high: paperFor(widest).high,
        first: 1,
        left: 10,
      });
  // what is still to be typed in makes other checks fail, and other rows come into use
  const open = begins(page);
  const list = printed.find(({ block }) => block.kind === "table" && block.name === checkShown);
  const last =
    list !== undefined && !open ? lastFailing(page) : declared.handout ? lastShown(sheet) : bottom;
  const wanted = Math.min(bottom, last + (last === bottom || paged ? 0 : spareRows));
  // below the list of what does not hold stands what helps on the screen alone
  const end =
    paged || (list !== undefined && !open)
      ? wanted
      : (pages.find((one) => one >= wanted) ?? bottom);
  // the title of a page handed out is for the screen: on paper it begins with a letterhead
  sheet.pageSetup.printArea = `A$${portrait ? firstOnPaper : 1}:${columnLetters(widest)}$${Math.min(end, bottom)}`;
  if (paged) return;
  if (!portrait && !open) repeatHeader(sheet, printed, pages);
  for (const line of pages.filter((one) => one < end)) {
    sheet.getRow(lastSeen(sheet, line)).addPageBreak();
  }
}

/**
 * A sheet of so many pages: as large as it keeps to them with no part cut, each page that a panel begins for itself; where
 * lists are too long for that, what follows moves up, and the last of it takes one page more. A page handed out of a job
 * that is just begun shows lines still to come: it is made to fit, since nobody knows where its pages will end.
 */
function setForm(page: Page, parts: readonly Part[], most: number, bottom: number): void {
  const { sheet, portrait, widest, widths } = page;
  const first = portrait ? firstOnPaper : 1;
  sheet.pageSetup.printArea = `A$${first}:${columnLetters(widest)}$${bottom}`;
  if (portrait && begins(page)) {
    for (const { from } of parts.filter(({ newPage }) => newPage)) {
      sheet.getRow(from - 1).addPageBreak();
    }
    return;
  }
  const usual = portrait ? paperScale : scaleFor(widths);
  const least = portrait ? leastOnPaper : leastForm;
  const scales = Array.from({ length: usual - least + 1 }, (_, i) => usual - i);
  const running = parts.map((part) => ({ ...part, newPage: false }));
  const tries = [parts, running].flatMap((all) =>
    scales.map((scale) => ({
      scale,
      pages: pagesOf(sheet, all, (paper.upright.high * 100) / scale - formRoom, first),
    })),
  );
  const usualRun = tries[scales.length] as (typeof tries)[number];
  const { scale, pages } = tries.find((one) => one.pages.length <= most) ?? usualRun;
  const { fitToPage: _, fitToWidth: __, fitToHeight: ___, ...kept } = sheet.pageSetup;
  sheet.pageSetup = { ...kept, scale, centered: true };
  for (const end of pages.slice(0, -1)) sheet.getRow(lastSeen(sheet, end)).addPageBreak();
}

/** Per cent below which a page handed out is not read with ease, and a form not written on. */
const leastOnPaper = 74;
const leastForm = 50;
/** Points of a page that are left to what programs reckon otherwise. */
const formRoom = 24;

/** Programs pass over a page break behind a row that is hidden. */
function lastSeen(sheet: Sheet, line: number): number {
  let seen = line;
  while (seen > 1 && sheet.getRow(seen).hidden) seen -= 1;
  return seen;
}

/**
 * Where one table alone goes over the end of a page, its column headings stand again at the head of the next. Several
 * such tables would get the headings of the first: then none is repeated.
 */
function repeatHeader(sheet: Sheet, printed: readonly PlacedBlock[], pages: readonly number[]) {
  const parted = printed.filter(({ band, bottom }) =>
    pages.some((end) => band !== undefined && end > band.header && end < bottom),
  );
  const [only, ...others] = parted;
  if (only?.band === undefined || others.length > 0) return;
  // on a page after those of the table, the headings would stand over what they do not head
  const end = pages.find((one) => one >= only.bottom) ?? only.bottom;
  if (printed.some(({ bottom }) => bottom > end)) return;
  sheet.pageSetup.printTitlesRow = `${only.band.header}:${only.band.header + 1}`;
}

/** Points of the blank line between two blocks, and below a chart. */
const gap = 8;

function closeUp(sheet: Sheet, own: readonly PlacedBlock[]): void {
  for (const { block, bottom } of own) {
    if (block.kind !== "panel") sheet.getRow(bottom + 1).height = gap;
  }
}

/** On a page handed out white is a row of a panel: the two lines below a chart, which need none, are low. */
function closeUpCharts(sheet: Sheet, own: readonly PlacedBlock[]): void {
  for (const { block, bottom } of own) {
    if (block.kind !== "chart") continue;
    for (const line of [bottom, bottom + 1]) sheet.getRow(line).height = gap / 2;
  }
}

const isPrinted = ({ block }: PlacedBlock): boolean =>
  !("printed" in block && block.printed === false);

/** The first line below title and purpose. */
const firstOnPaper = 4;

/** A spreadsheet cannot leave out a sheet that is in sight; pages of empty cells it does. */
export function printNothing(sheet: Sheet): void {
  const beyond = columnLetters(sheet.columnCount + 4);
  // of one cell alone LibreOffice 7.4 writes the name twice as it saves
  sheet.pageSetup.printArea = `${beyond}$1:${beyond}$2`;
}

function partOf({ block, top, bottom }: PlacedBlock): Part {
  const newPage = block.kind === "panel" && block.newPage === true;
  if (block.kind === "chart") {
    return { from: top, to: top + chartLines(block), whole: true, newPage };
  }
  return { from: top, to: bottom, whole: block.kind === "text", newPage };
}

/** The parts of a page handed out: a table of it stays with the panel before it, which heads it. */
function headed(printed: readonly PlacedBlock[]): Part[] {
  const parts: Part[] = [];
  printed.forEach((placed, i) => {
    const part = partOf(placed);
    const before = printed[i - 1]?.block;
    const heads = before?.kind === "panel" && placed.block.kind === "table";
    const panel = heads ? parts.pop() : undefined;
    parts.push(panel === undefined ? part : { ...part, from: panel.from });
  });
  return parts;
}

/** A little smaller, where that saves a page: how much, and down to which per cent. */
const leastShare = 0.85;
const leastLegible = 65;
/** And of a page handed out, which is read outdoors. */
const leastHandedOut = 82;

/** Per cent at which a sheet is printed and down to which; points of a page, and those left free; its first line. */
type Fitted = Record<"usual" | "least" | "high" | "left" | "first", number>;

/** The last line of each page, at the largest of the scales that need the fewest pages, which it sets. */
function fewestPages(
  sheet: Sheet,
  parts: readonly Part[],
  { usual, least, high, first, left }: Fitted,
): number[] {
  const at = (scale: number) => pagesOf(sheet, parts, (high * 100) / scale - left, first);
  let best = { scale: usual, pages: at(usual) };
  for (let scale = usual - 1; scale >= least; scale--) {
    const pages = at(scale);
    if (pages.length < best.pages.length) best = { scale, pages };
  }
  sheet.pageSetup.scale = best.scale;
  return best.pages;
}

/** The last line of each page. */
function pagesOf(sheet: Sheet, parts: readonly Part[], page: number, first = 1): number[] {
  const heightOf = (line: number) => {
    const { hidden, height = usualHeight } = sheet.getRow(line);
    return hidden ? 0 : height;
  };
  const ends: number[] = [];
  let used = 0;
  let line = first;
  const advance = (to: number) => {
    for (; line <= to; line++) {
      const height = heightOf(line);
      if (used + height > page && used > 0) {
        ends.push(line - 1);
        used = 0;
      }
      used += height;
    }
  };
  for (const { from, to, whole, newPage } of parts) {
    advance(from - 1);
    let height = 0;
    let begun = 0;
    for (let at = from; at <= to; at++) {
      height += heightOf(at);
      if (at < from + leastBegun) begun = height;
    }
    const keep = whole || height <= page * keptWhole ? height : begun;
    if (used > 0 && (newPage || used + keep > page)) {
      ends.push(from - 1);
      used = 0;
    }
    advance(to);
  }
  ends.push(line - 1);
  return ends;
}

/** Parts up to this share of a page are not parted: longer ones would leave too much white. */
const keptWhole = 0.4;

function lastFailing({ model, values }: Page): number {
  const { cells } = columnOf(model, checkShown, "state");
  const failing = cells.filter(({ index }) => values[index] !== "");
  return failing.at(-1)?.line ?? (cells[0]?.line as number);
}

function lastShown(sheet: Sheet): number {
  let last = 1;
  for (const row of sheet.filledRows()) {
    if (!row.hidden && showsSomething(row)) last = row.line;
  }
  return last;
}

const showsSomething = ({ cells }: Row): boolean =>
  cells.some((cell, column) => {
    if (cell === undefined || column > lastColumn || !isFilled(cell)) return false;
    const { shown } = cell;
    const isResult = typeof shown === "object" && cell.master === undefined;
    const value = isResult ? shown?.result : shown;
    return value !== null && value !== undefined && value !== "" && value !== 0 && value !== false;
  });
