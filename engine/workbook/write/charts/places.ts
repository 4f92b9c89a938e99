import { type ChartBlock, chartsOf } from "../../../template/chart.js";
import { chartLines } from "../../../template/layout.js";
import type { Model } from "../../../template/model.js";
import { paperColumns } from "../../../template/paper.js";
import { columnWidth, labelWidth, lastColumn, paperColumnWidth } from "../grid.js";
import { usualHeight } from "../print-area.js";
import type { Size } from "./xml.js";

/** A chart with where it stands: its sheet, its first line (from 1), how far from the left, its size in points. */
export interface ChartPlace extends Size {
  readonly sheet: string;
  readonly line: number;
  readonly left: Corner;
  readonly block: ChartBlock;
}

/** A column (from 0), and points to the right of its left edge. */
export interface Corner {
  readonly column: number;
  readonly points: number;
}

/** The charts that the template puts on its sheets. */
export function chartPlaces(model: Model): ChartPlace[] {
  return model.placed.flatMap(({ block, sheet, top }) => {
    if (block.kind !== "chart") return [];
    const portrait = model.sheets.find(({ name }) => name === sheet)?.portrait ?? false;
    const columns = portrait
      ? Array.from({ length: paperColumns }, () => paperColumnWidth)
      : [labelWidth, ...Array.from({ length: lastColumn - 1 }, () => columnWidth)];
    return placesOf(block, sheet, top, columns, usualHeight);
  });
}

/** A chart and those beside it, over columns of these widths, on lines so many points high. */
export function placesOf(
  block: ChartBlock,
  sheet: string,
  line: number,
  columns: readonly number[],
  lineHeight: number,
): ChartPlace[] {
  const all = chartsOf(block);
  const width = widthOf(columns) / all.length;
  const height = chartLines(block) * lineHeight;
  return all.map((one, i) => {
    const left = cornerAt(columns, i * width);
    return { sheet, line, left, block: one, width, height };
  });
}

/** A chart over so many of the columns of a sheet, from one on (counted from 0). */
export function placeOver(
  block: ChartBlock,
  sheet: string,
  at: { readonly line: number; readonly column: number; readonly over: number },
  columns: readonly number[],
  height: number,
): ChartPlace {
  const left = { column: at.column, points: 0 };
  const width = widthOf(columns.slice(at.column, at.column + at.over));
  return { sheet, line: at.line, left, block, width, height };
}

function cornerAt(columns: readonly number[], points: number): Corner {
  let column = 0;
  let left = points;
  while (column < columns.length - 1 && left >= widthOf([columns[column] as number])) {
    left -= widthOf([columns[column] as number]);
    column += 1;
  }
  return { column, points: left };
}

/** The charts that a template wants on the sheet Summary too; one that stands on several sheets, once. */
export function summaryCharts(model: Model): ChartBlock[] {
  const all = model.placed.flatMap(({ block }) => (block.kind === "chart" ? chartsOf(block) : []));
  const wanted = all.filter(({ summary }) => summary);
  return wanted.filter(
    ({ heading }, i) => wanted.findIndex((one) => one.heading === heading) === i,
  );
}

/** Width in points of columns whose widths count digits of the workbook's type: 7 pixels each, and 5. */
const widthOf = (columns: readonly number[]): number =>
  columns.reduce((sum, width) => sum + (width * 7 + 5) * 0.75, 0);
