import type { Block, ChartBlock, SheetDeclaration, TableBlock } from "./declare.js";
import type { PlacedBlock } from "./model.js";
import type { PaperTable } from "./paper.js";
import { columnsOn, messageKeysOn, tableShown, type Where, whereOf } from "./spread.js";

/**
 * Columns of a worksheet of lines: label, value, unit, message, note; of an input of the office, what
 * the book says.
 */
export const lineColumns = {
  ...{ label: 1, value: 2, unit: 3, message: 4, note: 5 },
  copy: 6,
} as const;

/** How many columns stand beside the first one: what fits the width of a page. */
export const bandWidth = 9;

/** Columns that a message takes at the least, so that a sentence can be read in it. */
export const messageWidth = 2;

/** The lines of the worksheet that a chart covers, its heading's among them. */
export const chartLines = ({ lines = 20 }: ChartBlock): number => lines;

/** The title and the sentence of purpose take the first lines. */
const firstLine = 4;

/** Gives every block its lines, from the top of each sheet down; those left out of print come last. */
export function placeBlocks(sheet: SheetDeclaration): PlacedBlock[] {
  let top = firstLine;
  const isPrinted = (block: Block) => !("printed" in block && block.printed === false);
  const inTurn = [
    ...sheet.blocks.filter(isPrinted),
    ...sheet.blocks.filter((one) => !isPrinted(one)),
  ];
  return inTurn.map((block) => {
    const placed = placeBlock(block, sheet.name, top);
    // on paper a block follows upon the one before: white is a row of a panel
    top = placed.bottom + (isOnPaper(block) ? 1 : 2);
    return placed;
  });
}

const isOnPaper = (block: Block): boolean =>
  block.kind === "panel" || (block.kind === "table" && block.paper !== undefined);

function placeBlock(block: Block, sheet: string, top: number): PlacedBlock {
  const plain = (count: number): PlacedBlock => {
    return { block, sheet, top, bottom: top + count };
  };
  if (block.kind === "chart") return plain(chartLines(block));
  if (block.kind === "text") return plain(block.paragraphs.length);
  if (block.kind === "panel") return plain(block.rows.length - 1);
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
  if (table.paper !== undefined) return placeOnPaper(block, table.paper, sheet, top);
  const where = block.kind === "part" ? sheet : undefined;
  const header = top + (noteOn(table, where) === undefined ? 1 : 2);
  const columns = [...columnsOn(table, where), ...messageKeysOn(table, where)];
  // a table that is laid out before its messages are made has none
  const band = { header, columns: columns.filter((key) => Object.hasOwn(table.columns, key)) };
  return { block, sheet, top, bottom: header + 1 + table.rows, band };
}

/** A table on a page handed out: its labels, where they are shown, take the line of the heading. */
function placeOnPaper(
  block: Extract<Block, { kind: "table" | "part" }>,
  { across }: PaperTable,
  sheet: string,
  top: number,
): PlacedBlock {
  const table = tableShown(block) as TableBlock;
  const columns = Object.keys(table.columns).filter((key) => Object.hasOwn(across, key));
  const starts = columns.map((key) => across[key]?.[0] as number);
  return {
    block,
    sheet,
    top,
    bottom: top + table.rows,
    band: { header: top - 1, columns, starts },
  };
}

/** Where row `row` (from 1) of a column stands. */
export function placeOf(
  placed: PlacedBlock,
  key: string,
  row: number,
): { column: number; line: number } {
  const at = placed.band?.columns.indexOf(key) ?? -1;
  if (placed.band === undefined || at < 0) throw new Error(`Column "${key}" has no place.`);
  const column = placed.band.starts?.[at] ?? at + 1;
  return { column, line: placed.band.header + 1 + row };
}
