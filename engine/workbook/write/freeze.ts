import type { PlacedBlock } from "../../template/model.js";
import type { Page } from "./blocks.js";
import { usualHeight } from "./print-area.js";

/** Title and purpose stay in sight on every sheet. */
const titleLines = 2;
/** Points that may stay in sight: more would leave small screens no room to scroll in. */
const mostFrozen = 190;
/** Rows of a table that no screen shows at once. */
const manyRows = 30;

/**
 * How many lines stay in sight as one scrolls: down to the column headings of the table that is most of the sheet, or
 * longer than a screen, where one is and stands near the top; else the title.
 */
export function frozenLines(page: Page, sheet: string): number {
  const own = page.model.placed.filter((one) => one.sheet === sheet);
  const last = own.at(-1)?.bottom ?? 0;
  const most = Math.min(last / 2, manyRows);
  const [main] = own.filter(({ band, bottom }) => band && bottom - band.header > most);
  if (page.portrait || main?.band === undefined) return titleLines;
  const end = main.band.header + 1;
  return isFirst(own, main) && heightDown(page, end) <= mostFrozen ? end : titleLines;
}

/** Headings of one table must not stay over another that stands above it. */
const isFirst = (own: readonly PlacedBlock[], main: PlacedBlock): boolean =>
  own.find(({ band }) => band !== undefined) === main;

function heightDown({ sheet }: Page, end: number): number {
  let sum = 0;
  for (let line = 1; line <= end; line++) {
    const { hidden, height = usualHeight } = sheet.getRow(line);
    sum += hidden ? 0 : height;
  }
  return sum;
}
