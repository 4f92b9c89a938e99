import { printAreas, within } from "../../engine/audit/printed-part.js";
import { positionOf } from "../../engine/workbook/read/address.js";
import type { SheetContent, WorkbookContent } from "../../engine/workbook/read/content.js";
import { tokensOf } from "./printed-words.js";

/** The texts that a sheet shows in the part that is printed, by address: of cells in no hidden row or column. */
export function shownTexts(content: WorkbookContent, sheet: SheetContent): Map<string, string> {
  const areas = printAreas(content, sheet.name);
  const { rows, columns = [] } = sheet.look ?? {};
  const found = new Map<string, string>();
  for (const [address, { value }] of sheet.cells) {
    const at = positionOf(address);
    if (typeof value !== "string" || value.trim() === "" || at === undefined) continue;
    const inHidden =
      rows?.get(at.row)?.hidden === true ||
      columns.some(({ from, to, hidden }) => hidden && at.column >= from && at.column <= to);
    if (!inHidden && within(areas, at)) found.set(address, value);
  }
  return found;
}

/** The words that the cells of a sheet show more often than its pages do, each with its cell. */
export function missingTexts(
  content: WorkbookContent,
  sheet: SheetContent,
  words: readonly string[],
): string[] {
  const left = new Map<string, number>();
  for (const word of words) left.set(word, (left.get(word) ?? 0) + 1);
  return [...shownTexts(content, sheet)].flatMap(([address, text]) =>
    tokensOf(text).flatMap((word) => {
      const count = left.get(word) ?? 0;
      left.set(word, count - 1);
      return count > 0 ? [] : [`${sheet.name}!${address}: ${word}`];
    }),
  );
}
