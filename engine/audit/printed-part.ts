import { type Position, positionOf } from "../workbook/read/address.js";
import type { Area } from "../workbook/read/area.js";
import type { WorkbookContent } from "../workbook/read/content.js";

const rectangle = /!?\$?([A-Z]{1,3})\$?(\d{1,7})(?::\$?([A-Z]{1,3})\$?(\d{1,7}))?$/i;

/**
 * What of a sheet is printed. Undefined: all of it, since no area is set. A definition that cannot be
 * read counts as no area, as programs take it. Where an area is defined twice, what either of them prints.
 */
export function printAreas(content: WorkbookContent, sheet: string): readonly Area[] | undefined {
  const areas = printDefinitions(content, sheet).flat();
  return areas.length === 0 ? undefined : areas;
}

/** The definitions of a sheet's print area: programs differ in which of two they go by. */
export function printDefinitions({ names }: WorkbookContent, sheet: string): (readonly Area[])[] {
  return names
    .filter(({ name, scope }) => scope === sheet && name.toLowerCase() === "_xlnm.print_area")
    .map(({ text }) => areasOf(text))
    .filter((areas) => areas.length > 0);
}

const areasOf = (text: string): readonly Area[] =>
  text.split(/,(?=(?:[^']*'[^']*')*[^']*$)/).flatMap((part) => {
    const [, column, row, lastColumn = column, lastRow = row] = rectangle.exec(part.trim()) ?? [];
    const from = positionOf(`${column}${row}`);
    const to = positionOf(`${lastColumn}${lastRow}`);
    return from === undefined || to === undefined ? [] : [{ from, to }];
  });

/** Does a cell lie in one of the areas? */
export const within = (areas: readonly Area[] | undefined, { row, column }: Position): boolean =>
  areas === undefined ||
  areas.some(
    ({ from, to }) =>
      row >= from.row && row <= to.row && column >= from.column && column <= to.column,
  );
