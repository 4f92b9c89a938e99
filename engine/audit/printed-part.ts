import { type Position, positionOf } from "../workbook/read/address.js";
import type { WorkbookContent } from "../workbook/read/content.js";

/** A rectangle of cells. */
export interface Area {
  readonly from: Position;
  readonly to: Position;
}

const rectangle = /!?\$?([A-Z]{1,3})\$?(\d{1,7})(?::\$?([A-Z]{1,3})\$?(\d{1,7}))?$/i;

/**
 * What of a sheet is printed. Undefined: all of it, since no area is set. A definition that cannot be
 * read counts as no area, as programs take it.
 */
export function printAreas({ names }: WorkbookContent, sheet: string): readonly Area[] | undefined {
  const defined = names.find(
    ({ name, scope }) => scope === sheet && name.toLowerCase() === "_xlnm.print_area",
  );
  const areas = (defined?.text ?? "").split(/,(?=(?:[^']*'[^']*')*[^']*$)/).flatMap((part) => {
    const [, column, row, lastColumn = column, lastRow = row] = rectangle.exec(part.trim()) ?? [];
    const from = positionOf(`${column}${row}`);
    const to = positionOf(`${lastColumn}${lastRow}`);
    return from === undefined || to === undefined ? [] : [{ from, to }];
  });
  return areas.length === 0 ? undefined : areas;
}

/** Does a cell lie in one of the areas? */
export const within = (areas: readonly Area[] | undefined, { row, column }: Position): boolean =>
  areas === undefined ||
  areas.some(
    ({ from, to }) =>
      row >= from.row && row <= to.row && column >= from.column && column <= to.column,
  );
