import type { Band, Cell, Table } from "../../template/model.js";
import { addressOf } from "../read/address.js";
import type { CellContent, DefinedName, SheetContent, Target } from "../read/content.js";
import type { InsertedRow } from "./result.js";

/** What the names of a band's columns point to. */
export interface FoundBand {
  /** The lines that most of its range names cover. */
  readonly area: Target;
  /** The worksheet line of each row of the table; undefined for a row that is gone. */
  readonly lines: readonly (number | undefined)[];
  /** The worksheet column of each table column by key, also of those that point elsewhere. */
  readonly columns: ReadonlyMap<string, Target>;
  readonly inserted: readonly InsertedRow[];
}

type NameOf = (name: string) => DefinedName | undefined;

/**
 * Finds the rows of one band of a table by the range names of its columns. Where the range has
 * grown, lines without any formula or value of the table's own count as inserted, then lines
 * without formulas, then the last ones; where it has shrunk, the last rows count as gone.
 * Undefined where no column has a name that points to cells.
 */
export function findBand(
  table: Table,
  band: Band,
  nameOf: NameOf,
  sheets: ReadonlyMap<string, SheetContent>,
): FoundBand | undefined {
  const columns = new Map<string, Target>();
  for (const key of band.columns) {
    const target = nameOf(`${table.name}.${key}`)?.target;
    if (target !== undefined && target.from.column === target.to.column) columns.set(key, target);
  }
  const area = mostCommon([...columns.values()]);
  if (area === undefined) return undefined;
  const cells = sheets.get(area.sheet)?.cells ?? new Map<string, CellContent>();
  const length = Math.min(area.to.row - area.from.row + 1, longestRange);
  const lines = Array.from({ length }, (_, i) => area.from.row + i);
  const places = placesOf(table, band, columns, area);
  const contentOf = (line: number) =>
    places.flatMap(({ name, column }): [string, CellContent][] => {
      const found = cells.get(addressOf({ row: line, column }));
      return found === undefined ? [] : [[name, found]];
    });
  const calculates = places.some(({ formula }) => formula);
  let lastFilled: number | undefined;
  const passed = passedOver(lines, table.block.rows, (line) => {
    const content = contentOf(line);
    lastFilled ??= lines.findLast((one) => contentOf(one).length > 0) ?? 0;
    // without formulas to tell, a gap among filled rows is the likelier one to be new
    if (content.length === 0) return line < lastFilled ? 3 : 2;
    return calculates && !content.some(([, { formula }]) => formula !== undefined) ? 1 : 0;
  });
  const kept = lines.filter((line) => !passed.has(line));
  return {
    area,
    lines: Array.from({ length: table.block.rows }, (_, i) => kept[i]),
    columns,
    inserted: [...passed].map((line) => ({
      table: table.name,
      sheet: area.sheet,
      line,
      after: kept.filter((one) => one < line).length,
      filled: new Map(contentOf(line)),
    })),
  };
}

/** No table of a template is near as long; a forged range must not take the memory. */
const longestRange = 20000;

/** The worksheet columns of the band; what the compiler implies has no name, and stands beside the others. */
function placesOf(
  table: Table,
  band: Band,
  columns: ReadonlyMap<string, Target>,
  area: Target,
): { name: string; column: number; formula: boolean }[] {
  const agreeing = band.columns.filter((key) => {
    const target = columns.get(key);
    return target !== undefined && sameRows(target, area);
  });
  const first = agreeing[0] as string;
  const shift = (columns.get(first) as Target).from.column - modelColumn(table, first).column;
  return band.columns.flatMap((key) => {
    const cell = modelColumn(table, key);
    const formula =
      table.columns.get(key)?.cells.some(({ native }) => native !== undefined) === true;
    if (cell.implied) return [{ name: cell.name, column: cell.column + shift, formula }];
    if (!agreeing.includes(key)) return [];
    return [{ name: cell.name, column: (columns.get(key) as Target).from.column, formula }];
  });
}

const modelColumn = (table: Table, key: string): Cell => table.columns.get(key)?.cells[0] as Cell;

/** The lines too many: those most like inserted ones (by `rank`, higher first), the lowest first among equals. */
function passedOver(
  lines: readonly number[],
  rows: number,
  rank: (line: number) => number,
): ReadonlySet<number> {
  const extra = lines.length - rows;
  if (extra <= 0) return new Set();
  const ranked = lines.map((line) => ({ line, rank: rank(line) }));
  ranked.sort((a, b) => b.rank - a.rank || b.line - a.line);
  return new Set(
    ranked
      .slice(0, extra)
      .map(({ line }) => line)
      .sort((a, b) => a - b),
  );
}

export const sameRows = (a: Target, b: Target): boolean =>
  a.sheet === b.sheet && a.from.row === b.from.row && a.to.row === b.to.row;

function mostCommon(targets: readonly Target[]): Target | undefined {
  let best: Target | undefined;
  let most = 0;
  for (const target of targets) {
    const count = targets.filter((other) => sameRows(other, target)).length;
    if (count > most) [best, most] = [target, count];
  }
  return best;
}
