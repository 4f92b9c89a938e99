import type { Block, ChartBlock, SheetDeclaration, TableBlock } from "./declare.js";
import type { Band, PlacedBlock } from "./model.js";
import { columnsOn, messageKeysOn, tableShown, type Where, whereOf } from "./spread.js";

/** Columns of a worksheet of lines: label, value, unit, message, note. */
export const lineColumns = { label: 1, value: 2, unit: 3, message: 4, note: 5 } as const;

/** How many columns stand beside the first one in a band: what fits a landscape page. */
export const bandWidth = 10;

/** Columns that a message takes at the least, so that a sentence can be read in it. */
const messageWidth = 3;

/** Where a table's messages stand one by one: beyond the page, with a column between. */
export const asideColumn = bandWidth + 3;

/** The lines of the worksheet that a chart covers, its heading's among them. */
export const chartLines = ({ lines = 20 }: ChartBlock): number => lines;

/** The title and the sentence of purpose take the first lines. */
const firstLine = 4;

/** Gives every block its lines, from the top of each sheet down. */
export function placeBlocks(sheet: SheetDeclaration): PlacedBlock[] {
  let top = firstLine;
  return sheet.blocks.map((block) => {
    const placed = placeBlock(block, sheet.name, top);
    top = placed.bottom + 2;
    return placed;
  });
}

function placeBlock(block: Block, sheet: string, top: number): PlacedBlock {
  const plain = (count: number): PlacedBlock => {
    return { block, sheet, top, bottom: top + count, bands: [] };
  };
  if (block.kind === "chart") return plain(chartLines(block));
  if (block.kind === "text") return plain(block.paragraphs.length);
  if (block.kind === "lines" || block.kind === "prose") {
    return plain(Object.keys(block.cells).length);
  }
  return placeTable(block, sheet, top);
}

/** The table's note stands over its first column, which heads the rows. */
export function noteOn(table: TableBlock, where: Where): string | undefined {
  const [first = ""] = Object.keys(table.columns);
  return whereOf(table, first) === where ? table.note : undefined;
}

function placeTable(
  block: Extract<Block, { kind: "table" | "part" }>,
  sheet: string,
  top: number,
): PlacedBlock {
  const table = tableShown(block) as TableBlock;
  const where = block.kind === "part" ? sheet : undefined;
  const implied = messageKeysOn(table, where).filter((key) => Object.hasOwn(table.columns, key));
  const aside = implied.slice(0, -1);
  const message = implied.at(-1);
  const [first, ...others] = columnsOn(table, where) as [string, ...string[]];
  const bands: Band[] = [];
  let header = top + (noteOn(table, where) === undefined ? 1 : 2);
  let left = others;
  do {
    const columns = [...(bands.length === 0 ? [first] : []), ...left.slice(0, bandWidth)];
    const repeats = bands.length > 0;
    left = left.slice(bandWidth);
    const free = bandWidth + (repeats ? 0 : 1) - columns.length;
    const isLast = left.length === 0;
    // the message takes what is left of the last band, or has one of its own
    if (isLast && message !== undefined && free >= messageWidth) columns.push(message);
    bands.push({ header, columns, aside: repeats ? [] : aside, repeats });
    header += table.rows + 3;
    if (isLast && message !== undefined && free < messageWidth) {
      bands.push({ header, columns: [message], aside: [], repeats: true });
      header += table.rows + 3;
    }
  } while (left.length > 0);
  return { block, sheet, top, bottom: header - 2, bands };
}

/** Where row `row` (from 1) of a column stands. */
export function placeOf(
  placed: PlacedBlock,
  key: string,
  row: number,
): { column: number; line: number } {
  for (const band of placed.bands) {
    const at = band.columns.indexOf(key);
    const line = band.header + 1 + row;
    if (at >= 0) return { column: at + 1 + (band.repeats ? 1 : 0), line };
    const beyond = band.aside.indexOf(key);
    if (beyond >= 0) return { column: asideColumn + beyond, line };
  }
  throw new Error(`Column "${key}" has no place.`);
}

/** The columns of a table that a placed block shows. */
export const columnsIn = ({ bands }: PlacedBlock): string[] =>
  bands.flatMap(({ columns, aside }) => [...columns, ...aside]);
