import type { Cell, Model } from "../../template/model.js";
import { aligned, shiftsAt, summed } from "./align.js";
import type { Place } from "./place.js";

/** Where a sheet of the template, its lines and its columns have gone in a workbook. */
export interface SheetDrift {
  /** The sheet's name in the workbook. */
  readonly sheet: string;
  readonly lines: ReadonlyMap<number, number>;
  readonly columns: ReadonlyMap<number, number>;
}

/** From the places of its cells with names: the drift of each sheet of which any was found. */
export function driftOf(
  model: Model,
  places: ReadonlyMap<Cell, Place>,
): ReadonlyMap<string, SheetDrift> {
  const drifts = new Map<string, SheetDrift>();
  const bySheet = groupedBySheet(places);
  for (const { name } of model.sheets) {
    const own = bySheet.get(name) ?? [];
    const sheet = mostCommon(own.map(([, place]) => place.sheet));
    if (sheet === undefined) continue;
    const here = own.filter(([, place]) => place.sheet === sheet);
    const along = (axis: "line" | "column") =>
      aligned(
        summed(here.map(([cell, place]) => ({ from: cell[axis], to: place[axis], weight: 1 }))),
      );
    drifts.set(name, { sheet, lines: along("line"), columns: along("column") });
  }
  return drifts;
}

function groupedBySheet(places: ReadonlyMap<Cell, Place>): Map<string, [Cell, Place][]> {
  const found = new Map<string, [Cell, Place][]>();
  for (const pair of places) {
    const here = found.get(pair[0].sheet);
    if (here === undefined) found.set(pair[0].sheet, [pair]);
    else here.push(pair);
  }
  return found;
}

/** The places that a cell without a name can have, the likeliest first. */
export function placesByDrift(cell: Cell, { sheet, lines, columns }: SheetDrift): Place[] {
  const known = lines.get(cell.line);
  const candidates =
    known === undefined ? shiftsAt(lines, cell.line).map((shift) => cell.line + shift) : [known];
  return candidates
    .flatMap((line) =>
      shiftsAt(columns, cell.column).map((shift) => ({ sheet, line, column: cell.column + shift })),
    )
    .filter(({ line, column }) => line > 0 && column > 0);
}

/** Where the cells around it say that a cell stands; undefined where they do not agree. */
export function homeOf(cell: Cell, drift: SheetDrift): Place | undefined {
  const places = placesByDrift(cell, drift);
  return places.length === 1 ? places[0] : undefined;
}

/** Does the cell stand where the cells around it say? */
export function fits(cell: Cell, place: Place, drift: SheetDrift | undefined): boolean {
  return (
    place.sheet === drift?.sheet &&
    drift.lines.get(cell.line) === place.line &&
    drift.columns.get(cell.column) === place.column
  );
}

function mostCommon(names: readonly string[]): string | undefined {
  const counts = new Map<string, number>();
  for (const name of names) counts.set(name, (counts.get(name) ?? 0) + 1);
  return [...counts].sort((a, b) => b[1] - a[1])[0]?.[0];
}
