import { readFile } from "node:fs/promises";
import type { CellValue, WorkbookContent } from "../../engine/workbook/read/content.js";
import { readWorkbook } from "../../engine/workbook/read/read.js";

/** The formula cells whose value another program finds differently, and how many were looked at. */
export interface Comparison {
  readonly compared: number;
  readonly differences: readonly string[];
}

/**
 * Holds every formula cell of a workbook, as we wrote it, against the same workbook as another
 * program recalculated and stored it.
 */
export async function compareWith(written: Uint8Array, stored: string): Promise<Comparison> {
  const theirs = readWorkbook(new Uint8Array(await readFile(stored)));
  return compared(readWorkbook(written), theirs);
}

/**
 * The same of both workbooks as they were read.
 *
 * @param part how far numbers may lie apart, as a share of their size, or of 1 where that is smaller
 */
export function compared(ours: WorkbookContent, theirs: WorkbookContent, part = 1e-9): Comparison {
  const differences: string[] = [];
  let count = 0;
  for (const sheet of ours.sheets) {
    const other = theirs.sheets.find(({ name }) => name === sheet.name);
    for (const [address, { formula, value }] of sheet.cells) {
      if (formula === undefined) continue;
      count += 1;
      const found = other?.cells.get(address)?.value ?? null;
      if (agrees(value, found, part)) continue;
      differences.push(
        `${sheet.name}!${address} =${formula}: ours ${shown(value)}, theirs ${shown(found)}`,
      );
    }
  }
  return { compared: count, differences };
}

function agrees(mine: CellValue, theirs: CellValue, part: number): boolean {
  if (typeof mine === "number" && typeof theirs === "number") {
    return Math.abs(mine - theirs) <= part * Math.max(1, Math.abs(mine));
  }
  // LibreOffice saves yes/no results of some formulas as 1 and 0
  if (typeof mine === "boolean" && typeof theirs === "number") return Number(mine) === theirs;
  if (isError(mine) && isError(theirs)) return mine.error === theirs.error;
  // Gnumeric stores texts without the mark that keeps blanks at their ends
  return text(mine) === text(theirs);
}

const isError = (value: CellValue): value is { readonly error: string } =>
  typeof value === "object" && value !== null;

const text = (value: CellValue): unknown =>
  typeof value === "string" ? value.trim() : (value ?? "");

const shown = (value: CellValue): string => (isError(value) ? value.error : String(value));
