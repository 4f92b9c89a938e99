import { addressOf } from "../../workbook/read/address.js";
import type { CellValue, SheetContent, Target } from "../../workbook/read/content.js";
import { targetOf } from "../../workbook/read/defined-names.js";
import type { KeptPoints } from "../../workbook/read/look/charts.js";
import type { Finding } from "../finding.js";
import { agree, short } from "../subject.js";
import { type LookPair, lookFinding } from "./compared.js";

/**
 * Figures that a chart keeps for programs that show it without calculating, where they are neither what the cells that
 * it draws hold nor what the template gives: a cell whose own value is at fault is told as that.
 */
export function checkKeptPoints({ found, now, then, content }: LookPair): Finding[] {
  const names = new Map(content.sheets.map(({ name }) => [name.toLowerCase(), name]));
  const fresh = keptIn(then);
  for (const [i, kept] of keptIn(now).entries()) {
    const target = targetOf(kept.area, names);
    const sheet = content.sheets.find(({ name }) => name === target?.sheet);
    const said = target && sheet && firstOther(kept, new Map(fresh[i]?.points), target, sheet);
    if (said === undefined) continue;
    return [
      lookFinding(`sheet ${found.name}`, said, "what the cells hold", {
        code: "drawn",
        advice: "Open it in a spreadsheet program, recalculate and save it: charts are drawn anew.",
      }),
    ];
  }
  return [];
}

const keptIn = ({ charts }: LookPair["now"]): KeptPoints[] => charts.flatMap(({ kept }) => kept);

function firstOther(
  { points, numeric }: KeptPoints,
  fresh: ReadonlyMap<number, string>,
  { from, to }: Target,
  { name, cells }: SheetContent,
): string | undefined {
  const columns = to.column - from.column + 1;
  for (const [place, text] of points) {
    if (text === fresh.get(place)) continue;
    const at = {
      row: from.row + Math.floor(place / columns),
      column: from.column + (place % columns),
    };
    const value = cells.get(addressOf(at))?.value ?? null;
    if (at.row > to.row || isSame(text, numeric, value)) continue;
    return `a chart keeps ${short(text, 40)}, where ${name}!${addressOf(at)} holds ${short(String(value), 40)}`;
  }
  return undefined;
}

/** Numbers within 1e-9. Whatever else differs in kind is a way of writing: a date as a text, a blank as 0. */
function isSame(text: string, numeric: boolean, value: CellValue): boolean {
  if (typeof value === "number") return !numeric || agree(value, Number(text));
  if (typeof value !== "string" || numeric) return true;
  return value.trim() === text.trim();
}
