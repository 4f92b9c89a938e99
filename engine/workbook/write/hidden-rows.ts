import { rowIsShown } from "../../evaluate/rows-in-use.js";
import { type Tree, walk } from "../../formula/tree.js";
import { openFields } from "../../job/missing.js";
import type { TableBlock } from "../../template/declare.js";
import type { Band, Cell, Column, PlacedBlock } from "../../template/model.js";
import { columnOf } from "../../template/model.js";
import { inputsOn } from "../../template/spread.js";
import { areaOf } from "./area-of.js";
import type { Page } from "./blocks.js";
import { formulaContent } from "./cells.js";
import { styles } from "./look.js";

/** Rows left in sight below those in use, so that a thing more shows at once. */
const spareRows = 1;

/** What a sheet says under its title where a row that is hidden has come into use. */
export const hiddenRowsAlarm = "A row in use is hidden: select all rows, right-click, Unhide";
const alarmColumn = 5;

/**
 * Hides the rows of a table that this job does not use, so that they take neither height nor paper.
 * They stay in sight where they are to be typed in. Under the title of the sheet a formula tells when a row that
 * is hidden comes into use: then its figures are among the sum of all rows, not of those in sight.
 * While a first field of the job is blank, the rows are still to come into use, and all stay in sight.
 */
export function hideRows(page: Page, placed: PlacedBlock, block: TableBlock, band: Band): void {
  const { sheet, model, values } = page;
  const where = placed.block.kind === "part" ? placed.sheet : undefined;
  const table = model.tables.get(block.name);
  if (table === undefined || (table.filled === undefined && table.shown === undefined)) return;
  const typedHere = inputsOn(block, where).length > 0;
  // where its rows are asked for, what they come to does not tell which of them are wanted
  if (typedHere && (table.shown === undefined || placed.block.kind === "part")) {
    const asked = askedElsewhere(block, table.filled?.spoken, where);
    if (asked.length > 0) hideLastRows(page, block, band, asked);
    return;
  }
  const figures = telling(page, block, band);
  if (figures.length === 0) {
    hideLastRows(page, block, band, [], placed);
    return;
  }
  const isBlank = (row: number) =>
    figures.every(({ cells }) => {
      const value = values[(cells[row - 1] as Cell).index];
      return value === 0 || value === null || value === undefined;
    });
  const rows = Array.from({ length: block.rows }, (_, i) => i + 1);
  const used = rows.map((row) => rowIsShown(model, table, row, values) || !isBlank(row));
  const none = !used.includes(true);
  const last = none || table.shown !== undefined ? -1 : used.lastIndexOf(true) + spareRows;
  const next = used.lastIndexOf(true) + 1;
  const hidden = rows.filter((_, i) => !used[i] && (i > last || i < next));
  if (!begins(page)) {
    for (const row of hidden) sheet.getRow(band.header + 1 + row).hidden = true;
    // a table without any row in use goes with its heading and the line below it
    if (none) hideWhole(page, placed);
  }
  // also where all rows are in sight, so that the cells of a job do not hang on what it holds
  const areas = figures.map(({ cells }) => areaOf(cells)).join(",");
  page.alarms.push(`ROUND(SUM(${areas})-SUBTOTAL(109,${areas}),6)<>0`);
}

function hideWhole({ sheet }: Page, { top, bottom }: PlacedBlock): void {
  for (let line = top; line <= bottom + 1; line++) sheet.getRow(line).hidden = true;
}

/** Is a first field of the job still blank, so that rows are to come into use as it is typed in? */
export const begins = ({ model, values }: Page): boolean => openFields(model, values).length > 0;

/** The inputs of other sheets without which a row does not come into use. */
function askedElsewhere(
  block: TableBlock,
  filled: Tree | undefined,
  where: string | undefined,
): string[] {
  if (filled === undefined) return [];
  const here = new Set(inputsOn(block, where).map(([key]) => key));
  return namesIn(filled).filter((key) => block.columns[key]?.kind === "input" && !here.has(key));
}

/**
 * Where inputs stand beside rows that other sheets bring into use, the last rows that are not in use are hidden; the
 * first column, which shows again what heads the rows, tells when one of them comes into use.
 */
function hideLastRows(
  page: Page,
  block: TableBlock,
  band: Band,
  asked: readonly string[],
  whole?: PlacedBlock,
): void {
  const { sheet, model, values } = page;
  const table = model.tables.get(block.name);
  const heads = columnOf(model, block.name, band.columns[0] as string);
  if (table === undefined || heads.declaration.repeats === undefined) return;
  const rows = Array.from({ length: block.rows }, (_, i) => i + 1);
  const isGiven = (key: string, row: number) => {
    const value = values[columnOf(model, block.name, key).cells[row - 1]?.index as number] ?? null;
    return value !== null && value !== "" && value !== 0;
  };
  const used = rows.findLastIndex(
    (row) =>
      rowIsShown(model, table, row, values) ||
      (asked.length > 0 && asked.every((key) => isGiven(key, row))),
  );
  const last = used + spareRows;
  if (!begins(page) && whole !== undefined && used < 0) hideWhole(page, whole);
  else if (!begins(page))
    for (const row of rows.slice(last + 1)) sheet.getRow(band.header + 1 + row).hidden = true;
  const area = areaOf(heads.cells);
  const blank = heads.declaration.quantity.kind === "text" ? '""' : "0";
  const place = `ROW(${area})-${band.header + 1}`;
  page.alarms.push(`SUMPRODUCT((${area}<>${blank})*(${place}>SUBTOTAL(103,${area})))>0`);
}

/**
 * Under the title of a sheet: a row that is hidden has come into use. Gnumeric knows no sums of rows in sight: there the
 * alarm is silent, and no error of a figure.
 */
export function writeAlarm({ sheet, alarms }: Page): void {
  if (alarms.length === 0) return;
  const target = sheet.getCell(3, alarmColumn);
  target.value = formulaContent(
    `IFERROR(IF(OR(${alarms.join(",")}),"${hiddenRowsAlarm}",""),"")`,
    "",
  );
  target.style = styles.sheetStatus;
}

/** The figures by which a row in use is known: those of the condition, else all that are zero in other rows. */
function telling({ model }: Page, block: TableBlock, band: Band): Column[] {
  const table = model.tables.get(block.name);
  const asked = table?.shown === undefined ? undefined : new Set(namesIn(table.shown.spoken));
  const figures = band.columns.flatMap((key) => {
    const column = columnOf(model, block.name, key);
    const { declaration } = column;
    if (declaration.kind !== "calc" || declaration.quantity.kind === "text") return [];
    if (declaration.quantity.kind === "yesno" || declaration.blank !== undefined) return [];
    return [{ key, column }];
  });
  const wanted = figures.filter(({ key }) => asked?.has(key) ?? true);
  return (wanted.length > 0 ? wanted : figures).map(({ column }) => column);
}

const namesIn = (tree: Tree): string[] =>
  [...walk(tree)].flatMap((node) => (node.kind === "own" ? [node.column] : []));
