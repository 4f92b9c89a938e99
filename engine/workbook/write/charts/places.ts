import type { ChartBlock } from "../../../template/declare.js";
import { chartLines } from "../../../template/layout.js";
import type { Model } from "../../../template/model.js";
import { columnWidth, labelWidth, lastColumn, pageWidth } from "../grid.js";
import { usualHeight } from "../print-area.js";
import type { Size } from "./xml.js";

/** A chart with where it stands: its sheet, its first line (from 1), its size in points. */
export interface ChartPlace extends Size {
  readonly sheet: string;
  readonly line: number;
  readonly block: ChartBlock;
}

/** The charts that the template puts on its sheets. */
export function chartPlaces(model: Model): ChartPlace[] {
  return model.placed.flatMap(({ block, sheet, top }) => {
    if (block.kind !== "chart") return [];
    const portrait = model.sheets.find(({ name }) => name === sheet)?.portrait ?? false;
    const width = portrait
      ? widthOf([pageWidth])
      : widthOf([labelWidth, ...Array.from({ length: lastColumn - 2 }, () => columnWidth)]);
    return [{ sheet, line: top, block, width, height: chartLines(block) * usualHeight }];
  });
}

/** The charts that a template wants on the sheet Summary too. */
export const summaryCharts = (model: Model): ChartBlock[] =>
  model.placed.flatMap(({ block }) => (block.kind === "chart" && block.summary ? [block] : []));

/** Width in points of columns whose widths count digits of the workbook's type: 7 pixels each, and 5. */
export const widthOf = (columns: readonly number[]): number =>
  columns.reduce((sum, width) => sum + (width * 7 + 5) * 0.75, 0);
