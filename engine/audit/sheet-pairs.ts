import type { Cell } from "../template/model.js";
import { addressOf, type Position, positionOf } from "../workbook/read/address.js";
import type { CellContent, SheetContent, WorkbookContent } from "../workbook/read/content.js";
import { type SheetMap, sheetMap } from "./lines.js";
import type { Subject } from "./subject.js";

/** A sheet as it is and as it would be written, and how their lines and columns correspond. */
export interface SheetPair {
  readonly found: SheetContent;
  readonly fresh: SheetContent;
  readonly map: SheetMap;
  /** The cells of the fresh sheet that show something in the workbook. */
  readonly shown: readonly ShownCell[];
  /** The addresses of the template's own cells on the fresh sheet. */
  readonly own: ReadonlySet<string>;
}

/** A cell of the template that shows something, as it is and as it would be written. */
export interface ShownCell {
  readonly at: Position;
  readonly address: string;
  readonly home: Position;
  readonly now: CellContent;
  readonly then: CellContent;
}

/** The sheets of a fresh workbook that the workbook has, whatever they are called there. */
export function sheetPairs(subject: Subject, fresh: WorkbookContent): SheetPair[] {
  const here = new Map(subject.content.sheets.map((one) => [one.name.toLowerCase(), one]));
  const cells = bySheet(subject.model.cells);
  return fresh.sheets.flatMap((sheet) => {
    const name = subject.match.sheets.get(sheet.name) ?? sheet.name;
    const found = here.get(name.toLowerCase());
    if (found === undefined) return [];
    const ours = cells.get(sheet.name) ?? [];
    const map = sheetMap(ours, subject.match, sheet, found);
    const own = new Set(ours.map(({ line, column }) => addressOf({ row: line, column })));
    return [{ found, fresh: sheet, map, shown: shownCells(sheet, found, map), own }];
  });
}

function bySheet(cells: readonly Cell[]): Map<string, Cell[]> {
  const sheets = new Map<string, Cell[]>();
  for (const cell of cells) {
    const own = sheets.get(cell.sheet);
    if (own === undefined) sheets.set(cell.sheet, [cell]);
    else own.push(cell);
  }
  return sheets;
}

function shownCells(fresh: SheetContent, found: SheetContent, map: SheetMap): ShownCell[] {
  const shown: ShownCell[] = [];
  for (const [written, then] of fresh.cells) {
    const address = map.addressOf(written);
    const now = address === undefined ? undefined : found.cells.get(address);
    if (address === undefined || now === undefined || isEmpty(now)) continue;
    const home = positionOf(written) as Position;
    const at = map.still ? home : (positionOf(address) as Position);
    shown.push({ at, address, home, now, then });
  }
  return shown;
}

const isEmpty = ({ value }: CellContent): boolean =>
  value === null || (typeof value === "string" && value.trim() === "");
