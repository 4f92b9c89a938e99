import { bandWidth } from "../../template/layout.js";
import { paperColumns } from "../../template/paper.js";

/** The page of a worksheet: a wide first column for labels, then columns of one width. */
export const lastColumn = bandWidth + 1;
export const labelWidth = 30;
export const columnWidth = 10.5;
/** Characters across a page handed out. */
export const pageWidth = 112;
/** Per cent at which that fits the width of a page, of letter paper or A4. */
export const paperScale = 88;
/** A column of its grid: twelve of them are as wide, each with its 5 pixels of margin. */
export const paperColumnWidth =
  Math.round(((pageWidth * 7 + 5) / paperColumns - 5) * 14.2857) / 100;

const lineHeight = 13;

/** Height in points for text wrapped at so many characters; spreadsheets do not fit merged cells. */
export function textHeight(text: string, characters: number): number {
  const lines = text.split("\n").reduce((sum, part) => sum + linesOf(part, characters), 0);
  return lines * lineHeight + 2;
}

/** As programs wrap: word by word, a longer one over several lines. */
function linesOf(text: string, characters: number): number {
  let lines = 1;
  let used = 0;
  for (const { length } of text.split(" ")) {
    const wanted = used === 0 ? length : used + 1 + length;
    if (wanted <= characters) {
      used = wanted;
      continue;
    }
    if (used > 0) lines += 1;
    lines += Math.max(0, Math.ceil(length / characters) - 1);
    used = length % characters || length;
  }
  return lines;
}

/** The width of a column in pixels: 7 for each digit of the workbook's type, and 5. */
const pixelsOf = (width: number): number => width * 7 + 5;

/** Points that a page holds between its margins: of letter paper or A4, whichever is less. */
export const paper = {
  upright: { wide: (8.27 - 0.9) * 72, high: (11 - 1.2) * 72 },
  lying: { wide: (11 - 0.9) * 72, high: (8.27 - 1.2) * 72 },
} as const;
export type Paper = (typeof paper)[keyof typeof paper];

/** Columns of a sheet from which on its pages lie, since upright they could not be read. */
const lyingFrom = 13;
export const paperFor = (columns: number): Paper =>
  columns > lyingFrom ? paper.lying : paper.upright;

/** Per cent at which columns of these widths fit the width of a page. */
export function scaleFor(widths: readonly number[]): number {
  const pixels = widths.reduce((sum, width) => sum + pixelsOf(width), 0);
  const fits = Math.floor((paperFor(widths.length).wide * 100) / (pixels * 0.75));
  return Math.max(leastScale, Math.min(100, fits));
}

/** Per cent below which no column is made wider. */
const leastWidened = 70;
/** Digits that a column of short texts may take. */
const widestText = 20;
/** And those that head the rows. */
const widestLabel = 42;

/**
 * The widths of a page's columns: those whose texts want more than the usual width get it, the longest text first, as
 * far as the page stays legible on paper.
 * @param wanted digits that the texts of each column want
 */
export function widened(wanted: readonly number[]): number[] {
  const widths: number[] = wanted.map((_, i) => (i === 0 ? labelWidth : columnWidth));
  const inTurn = wanted
    .map((width, i) => ({ i, width: Math.min(i === 0 ? widestLabel : widestText, width) }))
    .filter(({ i, width }) => width > (widths[i] as number))
    .sort((a, b) => Number(a.i === 0) - Number(b.i === 0) || b.width - a.width || a.i - b.i);
  const fits = (i: number, width: number) =>
    scaleFor(widths.map((one, at) => (at === i ? width : one))) >= leastWidened;
  for (const { i, width } of inTurn) {
    let wider = width;
    while (wider > (widths[i] as number) && !fits(i, wider)) wider -= 0.5;
    widths[i] = Math.max(widths[i] as number, wider);
  }
  return widths;
}

/** What is smaller is not read on paper. */
const leastScale = 50;
/** Inches. */
export const sideMargin = 0.45;

/** On a portrait page, where the type is larger. */
export const pageLineHeight = (text: string): number => textHeight(text, pageWidth * 1.08) + 2;
