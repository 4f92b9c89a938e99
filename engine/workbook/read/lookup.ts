import { addressOf } from "./address.js";
import type { CellContent, DefinedName, SheetContent, Target, WorkbookContent } from "./content.js";
import { WorkbookRefused } from "./refused.js";

/** Where a cell stands. */
export interface CellPlace {
  readonly sheet: string;
  readonly address: string;
}

/** A cell found by its defined name. */
export interface FoundCell extends CellPlace {
  readonly cell: CellContent;
}

const blank: CellContent = { value: null };
const longestColumn = 20000;

/**
 * The cell behind a defined name that holds for the whole workbook, in any case. A blank cell has value null.
 * Throws WorkbookRefused for a name that is missing or does not point to one cell.
 */
export function cellAt(content: WorkbookContent, name: string): FoundCell {
  return foundAt(content, placeAt(content.common, name));
}

/**
 * The cells behind a defined name for a piece of one column (top down) or of one row (left to right).
 * Throws WorkbookRefused for a name that is missing or points to anything else.
 */
export function columnAt(content: WorkbookContent, name: string): FoundCell[] {
  return placesAt(content.common, name).map((place) => foundAt(content, place));
}

/** Where the cell behind a name stands, as `cellAt` finds it. */
export function placeAt(names: readonly DefinedName[], name: string): CellPlace {
  const target = wantTarget(names, name);
  if (target.from.row !== target.to.row || target.from.column !== target.to.column) {
    throw badName(name, `points to ${describe(target)}, but one cell is wanted`);
  }
  return { sheet: target.sheet, address: addressOf(target.from) };
}

/** Where the cells behind a name stand, as `columnAt` finds them. */
export function placesAt(names: readonly DefinedName[], name: string): CellPlace[] {
  const target = wantTarget(names, name);
  const { sheet, from, to } = target;
  const rows = to.row - from.row;
  const columns = to.column - from.column;
  if (rows > 0 && columns > 0) {
    throw badName(name, `points to ${describe(target)}, but one column or one row is wanted`);
  }
  const length = rows + columns + 1;
  if (length > longestColumn) {
    throw badName(name, `points to ${length} cells, but at most ${longestColumn} are read`);
  }
  return Array.from({ length }, (_, step) => ({
    sheet,
    address: addressOf({
      row: from.row + (rows > 0 ? step : 0),
      column: from.column + (rows > 0 ? 0 : step),
    }),
  }));
}

/** What a cell holds; a blank one has value null. Throws RangeError for a sheet that was left out when reading. */
export function cellIn(content: WorkbookContent, { sheet, address }: CellPlace): CellContent {
  const cells = cellsOf(content).get(sheet);
  if (cells === undefined) throw new RangeError(`Sheet ${sheet} was left out when reading`);
  return cells.get(address) ?? blank;
}

/** The definition of a name for the whole workbook, or undefined. Letter case does not count. */
export function nameAmong(names: readonly DefinedName[], name: string): DefinedName | undefined {
  return indexOf(names).get(name.toLowerCase());
}

function foundAt(content: WorkbookContent, place: CellPlace): FoundCell {
  return { ...place, cell: cellIn(content, place) };
}

function wantTarget(names: readonly DefinedName[], name: string): Target {
  const defined = nameAmong(names, name);
  if (defined === undefined) throw badName(name, "is missing");
  if (defined.target === undefined) {
    throw badName(name, `is defined as ${JSON.stringify(defined.text.slice(0, 60))}, not as cells`);
  }
  return defined.target;
}

function describe({ sheet, from, to }: Target): string {
  return `${sheet}!${addressOf(from)}:${addressOf(to)}`;
}

function badName(name: string, what: string): WorkbookRefused {
  return new WorkbookRefused(
    "workbook-name",
    `The defined name ${name} ${what}. It was changed or deleted in the workbook: undo that, or start from a fresh copy.`,
  );
}

const indexes = new WeakMap<readonly DefinedName[], ReadonlyMap<string, DefinedName>>();
const sheets = new WeakMap<WorkbookContent, ReadonlyMap<string, SheetContent["cells"]>>();

/** Found once for each list, since a job looks up hundreds of names. */
function indexOf(names: readonly DefinedName[]): ReadonlyMap<string, DefinedName> {
  const known = indexes.get(names);
  if (known !== undefined) return known;
  const made = new Map(names.map((defined) => [defined.name.toLowerCase(), defined]));
  indexes.set(names, made);
  return made;
}

function cellsOf(content: WorkbookContent): ReadonlyMap<string, SheetContent["cells"]> {
  const known = sheets.get(content);
  if (known !== undefined) return known;
  const read = content.sheets.filter((sheet) => sheet.read);
  const made = new Map(read.map(({ name, cells }) => [name, cells]));
  sheets.set(content, made);
  return made;
}
