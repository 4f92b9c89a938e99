import type { Value } from "../../formula/value.js";
import type { Model } from "../../template/model.js";
import { columnOf } from "../../template/model.js";
import { tableShown } from "../../template/spread.js";

/** Digits of a column's width that a letter takes, about. */
const perLetter = 0.92;

/** Of a column of texts that are typed after the work: as wide before they stand there as with them. */
const toBeTyped = 20;

/**
 * The width that the texts of a sheet's tables want in each of its columns, to stand in one line; none where charts
 * stand on the sheet, since they are drawn over columns of the usual widths.
 */
export function wantedWidths(
  model: Model,
  values: readonly Value[],
  sheet: string,
  widest: number,
): number[] {
  const wanted = Array.from({ length: widest }, () => 0);
  const placed = model.placed.filter((one) => one.sheet === sheet);
  const isAfter = model.sheets.some(
    ({ name, afterwards }) => name === sheet && afterwards === true,
  );
  if (placed.some(({ block }) => block.kind === "chart")) return wanted;
  for (const { block, band } of placed) {
    const table = tableShown(block);
    // what stands last in a table takes the columns that are left
    for (const key of table === undefined ? [] : (band?.columns.slice(0, -1) ?? [])) {
      const { cells, declaration } = columnOf(model, table?.name as string, key);
      if (declaration.quantity.kind !== "text") continue;
      if (isAfter && declaration.kind === "input") {
        const column = (cells[0]?.column as number) - 1;
        wanted[column] = Math.max(wanted[column] as number, toBeTyped);
        continue;
      }
      const lengths = cells.map(({ index }) => String(values[index] ?? "").length);
      const column = (cells[0]?.column as number) - 1;
      wanted[column] = Math.max(wanted[column] as number, Math.max(...lengths) * perLetter + 1);
    }
  }
  return wanted;
}
