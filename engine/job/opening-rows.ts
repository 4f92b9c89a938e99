import type { OfficeValues } from "../template/book-layout.js";
import type { Model } from "../template/model.js";
import { inputPlanOf } from "./input-plan.js";
import type { RowValues } from "./record.js";
import { recorded } from "./trail/inputs.js";

/** The rows that a table opens with, the office's or the template's, as a job record holds them. */
export function openingRows(model: Model, table: string, office?: OfficeValues): RowValues[] {
  const rows: Record<string, ReturnType<typeof recorded>>[] = [];
  for (const { cell, key = "", isOpen, ofRow, usual, ...input } of inputPlanOf(model, office)
    .inputs) {
    if (input.table !== table || !isOpen) continue;
    const at = (cell.row ?? 1) - 1;
    rows[at] = { ...rows[at], [key]: recorded(cell, ofRow ?? usual) };
  }
  return rows;
}
