import { lastColumn, lastRow, positionOf } from "./address.js";
import type { Target } from "./content.js";

const rectangle =
  /^(?:'((?:[^']|'')+)'|([^'!()[\]{},;:"]+))!\$([A-Z]{1,3})\$(\d{1,7})(?::\$([A-Z]{1,3})\$(\d{1,7}))?$/i;

/**
 * Where a defined name points, if it is one cell or rectangle with absolute references on a sheet of the
 * workbook: 'List of runs'!$B$4:$B$15. Undefined for constants, formulas, whole columns, unions, other
 * workbooks, relative references (whose meaning depends on the cell that uses them) and deleted cells.
 */
export function targetOf(
  text: string,
  sheetNames: ReadonlyMap<string, string>,
): Target | undefined {
  const match = rectangle.exec(text.trim());
  if (match === null) return undefined;
  const [, quoted, plain, column, row, otherColumn = column, otherRow = row] = match;
  const sheet = sheetNames.get((quoted?.replaceAll("''", "'") ?? plain ?? "").toLowerCase());
  const one = positionOf(`${column}${row}`);
  const other = positionOf(`${otherColumn}${otherRow}`);
  if (sheet === undefined || one === undefined || other === undefined) return undefined;
  const target = {
    sheet,
    from: { row: Math.min(one.row, other.row), column: Math.min(one.column, other.column) },
    to: { row: Math.max(one.row, other.row), column: Math.max(one.column, other.column) },
  };
  const whole =
    (target.from.row === 1 && target.to.row === lastRow) ||
    (target.from.column === 1 && target.to.column === lastColumn);
  return whole ? undefined : target;
}
