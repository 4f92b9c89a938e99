import { bandWidth } from "../../template/layout.js";

/** The page of a worksheet: a wide first column for labels, then columns of one width. */
export const lastColumn = bandWidth + 1;
export const labelWidth = 30;
export const columnWidth = 10.5;
/** The one column of a portrait page. */
export const pageWidth = 96;

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

/** Per cent at which columns up to this one fit the width of a page, of letter paper or A4, between the margins. */
export function scaleFor(widest: number): number {
  const pixels = labelWidth * 7 + 5 + (widest - 1) * (columnWidth * 7 + 5);
  const fits = Math.floor(((8.27 - 2 * sideMargin) * 96 * 100) / pixels);
  return Math.max(leastScale, Math.min(100, fits));
}

/** What is smaller is not read on paper. */
const leastScale = 50;
/** Inches. */
export const sideMargin = 0.45;

export const proseHeight = (text: string): number =>
  textHeight(text, labelWidth + bandWidth * columnWidth) + 4;

/** On a portrait page, where the type is larger. */
export const pageLineHeight = (text: string): number => textHeight(text, pageWidth * 1.08) + 2;
