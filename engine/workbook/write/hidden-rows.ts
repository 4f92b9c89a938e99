import { addressOf } from "../../address.js";
import { rowIsShown } from "../../evaluate/rows-in-use.js";
import { walk } from "../../formula/tree.js";
import { firstFields } from "../../job/missing.js";
import type { TableBlock } from "../../template/declare.js";
import type { Band, Cell, Column, PlacedBlock } from "../../template/model.js";
import { columnOf } from "../../template/model.js";
import { inputsOn } from "../../template/spread.js";
import type { Page } from "./blocks.js";
import { formulaContent } from "./cells.js";
import { styles } from "./look.js";

/** Rows left in sight below those in use, so that a thing or two more show at once. */
const spareRows = 2;

const words = "← a row in use is hidden: select the rows around it, right-click, Unhide";

/**
 * Hides the rows of a table that this job does not use, so that they take neither height nor paper.
 * They stay in sight where they are to be typed in. Beside the heading a formula tells when a row that
 * is hidden comes into use: then its figures are among the sum of all rows, not of those in sight.
 * While a first field of the job is blank, the rows are still to come into use, and all stay in sight.
 */
export function hideRows(page: Page, placed: PlacedBlock, block: TableBlock, band: Band): void {
  const { sheet, model, values } = page;
  const where = placed.block.kind === "part" ? placed.sheet : undefined;
  const table = model.tables.get(block.name);
  if (table === undefined || (table.filled === undefined && table.shown === undefined)) return;
  const typedHere = inputsOn(block, where).length > 0;
  if (typedHere && table.shown === undefined) return;
  const figures = telling(page, block, band);
  if (figures.length === 0) return;
  const isBlank = (row: number) =>
    figures.every(({ cells }) => {
      const value = values[(cells[row - 1] as Cell).index];
      return value === 0 || value === null || value === undefined;
    });
  const rows = Array.from({ length: block.rows }, (_, i) => i + 1);
  const used = rows.map((row) => rowIsShown(model, table, row, values) || !isBlank(row));
  const none = !used.includes(true);
  const last = none || table.shown !== undefined ? -1 : used.lastIndexOf(true) + spareRows;
  const hidden = rows.filter((_, i) => !used[i] && i > last);
  const begins = firstFields(model).some(({ index }) => (values[index] ?? null) === null);
  if (!begins) {
    for (const row of hidden) sheet.getRow(band.header + 1 + row).hidden = true;
    // of a table without any row in use, the heading alone stays
    if (none)
      for (let line = placed.top + 1; line < band.header + 2; line++)
        sheet.getRow(line).hidden = true;
  }
  // also where all rows are in sight, so that the cells of a job do not hang on what it holds
  const areas = figures.map(({ cells }) => areaOf(cells)).join(",");
  const target = sheet.getCell(placed.top, 5);
  // Gnumeric has no 109, which leaves hidden rows out: there the alarm is silent, and no error of a figure
  const inSight = `SUBTOTAL(109,${areas})`;
  target.value = formulaContent(
    `IF(ISERROR(${inSight}),"",IF(ROUND(SUM(${areas})-${inSight},6)<>0,"${words}",""))`,
    "",
  );
  target.style = styles.headingAlarm;
}

/** The figures by which a row in use is known: those of the condition, else all that are zero in other rows. */
function telling({ model }: Page, block: TableBlock, band: Band): Column[] {
  const table = model.tables.get(block.name);
  const asked = table?.shown === undefined ? undefined : new Set(namesIn(table.shown.spoken));
  return band.columns.flatMap((key) => {
    const column = columnOf(model, block.name, key);
    const { declaration } = column;
    if (declaration.kind !== "calc" || declaration.quantity.kind === "text") return [];
    if (declaration.quantity.kind === "yesno" || declaration.blank !== undefined) return [];
    return asked === undefined || asked.has(key) ? [column] : [];
  });
}

const namesIn = (tree: Parameters<typeof walk>[0]): string[] =>
  [...walk(tree)].flatMap((node) => (node.kind === "own" ? [node.column] : []));

const areaOf = (cells: readonly Cell[]): string => {
  const [first, last] = [cells[0] as Cell, cells.at(-1) as Cell];
  return `${addressOf(first.column, first.line)}:${addressOf(last.column, last.line)}`;
};
