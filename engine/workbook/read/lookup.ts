import { addressOf } from "./address.js";
import type { CellContent, DefinedName, Target, WorkbookContent } from "./content.js";
import { WorkbookRefused } from "./refused.js";

/** A cell found by its defined name. */
export interface FoundCell {
  readonly sheet: string;
  readonly address: string;
  readonly cell: CellContent;
}

const blank: CellContent = { value: null };
const longestColumn = 20000;

/**
 * The cell behind a defined name that holds for the whole workbook, in any case. A blank cell has value null.
 * Throws WorkbookRefused for a name that is missing or does not point to one cell.
 */
export function cellAt(content: WorkbookContent, name: string): FoundCell {
  const target = wantTarget(content, name);
  if (target.from.row !== target.to.row || target.from.column !== target.to.column) {
    throw badName(name, `points to ${describe(target)}, but one cell is wanted`);
  }
  return found(content, target, 0, 0);
}

/**
 * The cells behind a defined name for a piece of one column (top down) or of one row (left to right).
 * Throws WorkbookRefused for a name that is missing or points to anything else.
 */
export function columnAt(content: WorkbookContent, name: string): FoundCell[] {
  const target = wantTarget(content, name);
  const rows = target.to.row - target.from.row;
  const columns = target.to.column - target.from.column;
  if (rows > 0 && columns > 0) {
    throw badName(name, `points to ${describe(target)}, but one column or one row is wanted`);
  }
  const length = rows + columns + 1;
  if (length > longestColumn) {
    throw badName(name, `points to ${length} cells, but at most ${longestColumn} are read`);
  }
  return Array.from({ length }, (_, step) =>
    found(content, target, rows > 0 ? step : 0, rows > 0 ? 0 : step),
  );
}

/** The name's definition for the whole workbook, or undefined. Letter case does not count. */
export function nameIn(content: WorkbookContent, name: string): DefinedName | undefined {
  return indexOf(content).names.get(name.toLowerCase());
}

function wantTarget(content: WorkbookContent, name: string): Target {
  const defined = nameIn(content, name);
  if (defined === undefined) throw badName(name, "is missing");
  if (defined.target === undefined) {
    throw badName(name, `is defined as ${JSON.stringify(defined.text.slice(0, 60))}, not as cells`);
  }
  return defined.target;
}

function found(content: WorkbookContent, target: Target, down: number, right: number): FoundCell {
  const { sheet, from } = target;
  const cells = indexOf(content).cells.get(sheet);
  if (cells === undefined) throw new RangeError(`Sheet ${sheet} was left out when reading`);
  const address = addressOf({ row: from.row + down, column: from.column + right });
  return { sheet, address, cell: cells.get(address) ?? blank };
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

interface Index {
  readonly names: ReadonlyMap<string, DefinedName>;
  readonly cells: ReadonlyMap<string, ReadonlyMap<string, CellContent>>;
}

const indexes = new WeakMap<WorkbookContent, Index>();

/** Found once for each workbook, since a job looks up hundreds of names. */
function indexOf(content: WorkbookContent): Index {
  let index = indexes.get(content);
  if (index === undefined) {
    const global = content.names.filter(({ scope }) => scope === undefined);
    index = {
      names: new Map(global.map((defined) => [defined.name.toLowerCase(), defined])),
      cells: new Map(
        content.sheets.filter(({ read }) => read).map(({ name, cells }) => [name, cells]),
      ),
    };
    indexes.set(content, index);
  }
  return index;
}
