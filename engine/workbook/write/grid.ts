import { bandWidth } from "../../template/layout.js";

/** The page of a worksheet: a wide first column for labels, then columns of one width. */
export const lastColumn = bandWidth + 1;
export const labelWidth = 38;
export const columnWidth = 12;
/** The one column of a portrait page. */
export const pageWidth = 96;

const lineHeight = 14;

/** Height in points for text wrapped at so many characters; spreadsheets do not fit merged cells. */
export function textHeight(text: string, characters: number): number {
  const lines = text
    .split("\n")
    .reduce((sum, part) => sum + Math.max(1, Math.ceil((part.length * 1.05) / characters)), 0);
  return lines * lineHeight + 2;
}

export const proseHeight = (text: string): number =>
  textHeight(text, (labelWidth + bandWidth * columnWidth) * 0.9) + 4;

/** On a portrait page, where the type is larger. */
export const pageLineHeight = (text: string): number => textHeight(text, pageWidth * 1.08) + 2;
