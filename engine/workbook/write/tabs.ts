import type { SheetDeclaration } from "../../template/declare.js";
import type { Sheet } from "./book/sheet.js";
import { formulaContent } from "./cells.js";
import { styles } from "./look.js";

/** The colors of tabs, by the group of a sheet in the order of the groups; they differ in lightness. */
const colors = ["FF2F5D62", "FFD6B36A", "FF7A3B5E", "FF8FBCC0", "FF9C6B1F", "FF4A4A4A"] as const;
/** The sheets that every workbook has. */
const ownColor = "FFB9C4C6";

/** The color of a sheet's tab: one for each group of sheets. */
export function tabColor(sheets: readonly SheetDeclaration[], group: string | undefined): string {
  const groups = [...new Set(sheets.flatMap((one) => one.group ?? []))];
  const at = group === undefined ? -1 : groups.indexOf(group);
  return at < 0 ? ownColor : (colors[at % colors.length] as string);
}

export const firstSheet = "Summary";

/** A way back, beside the title and off the page. */
export function linkBack(sheet: Sheet, column: number): void {
  const words = `← ${firstSheet}`;
  const cell = sheet.getCell(1, column);
  cell.value = formulaContent(`HYPERLINK("#'${firstSheet}'!A1","${words}")`, words);
  cell.style = styles.link;
  sheet.widths[column] = Math.max(sheet.widths[column] ?? 0, 12);
}
