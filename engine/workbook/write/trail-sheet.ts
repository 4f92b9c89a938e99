import type { Workbook, Worksheet } from "exceljs";
import type { Value } from "../../formula/value.js";
import { recorded, unitFor } from "../../job/trail/inputs.js";
import { inputOrigins } from "../../job/trail/origin.js";
import type { InputValue } from "../../template/declare.js";
import type { Cell, Model } from "../../template/model.js";
import { trailColumns, trailSheet } from "../match/trail-columns.js";
import { textHeight } from "./grid.js";
import type { Identity } from "./identity.js";
import { styles } from "./look.js";
import { shownUnit } from "./number-format.js";
import { printNothing } from "./print-area.js";
import { linkBack } from "./tabs.js";

const widths = [6, 26, 18, 9, 22, 18, 24, 40, 34, 34];

type Content = InputValue | null;

/** Numbers among texts, in a list that is read line by line. */
const toTheLeft = {
  ...styles.note,
  alignment: { ...styles.note.alignment, horizontal: "left" },
} as const;

/**
 * The sheet that says where each value comes from: the inputs and the office-book figures as
 * this workbook was written, then every change of the trail. Reading it back shows what was
 * changed in the workbook since.
 */
export function writeTrail(
  workbook: Workbook,
  model: Model,
  values: readonly Value[],
  identity: Identity,
): void {
  const sheet = workbook.addWorksheet(trailSheet);
  widths.forEach((width, i) => {
    sheet.getColumn(i + 1).width = width;
  });
  put(sheet, 1, 1, "Trail", styles.title);
  put(sheet, 2, 1, "Where every value comes from, and what was changed when.", styles.purpose);
  let line = 4;
  const part = (heading: string, columns: readonly string[], rows: readonly Content[][]) => {
    columns.forEach((_, i) => {
      put(sheet, line, i + 1, null, styles.heading);
    });
    put(sheet, line, 1, heading, styles.heading);
    columns.forEach((text, i) => {
      put(sheet, line + 1, i + 1, text || null, styles.header);
    });
    rows.forEach((row, i) => {
      row.forEach((value, column) => {
        put(sheet, line + 2 + i, column + 1, value, toTheLeft);
      });
      const texts = row.map((value, column) =>
        textHeight(String(value ?? ""), widths[column] ?? 20),
      );
      sheet.getRow(line + 2 + i).height = Math.max(...texts);
    });
    line += rows.length + 3;
  };
  const { trail = [] } = identity;
  const { values: valueColumns, entries } = trailColumns;
  part("Inputs as this workbook was written", valueColumns, inputRows(model, values, identity));
  part("Prices as this workbook was written", valueColumns, priceRows(model, values, identity));
  const changes = trail.map((one) => {
    const { number, input, new: now, unit, from, by, time, note, old, hash } = one;
    return [number, input, now, unit, from, by, time, note ?? null, old, hash];
  });
  part("Changes", entries, changes);
  sheet.views = [{ state: "frozen", ySplit: 2, showGridLines: false }];
  sheet.pageSetup = { orientation: "landscape", fitToPage: true, fitToWidth: 1, fitToHeight: 0 };
  linkBack(sheet, sheet.columnCount + 1);
  printNothing(sheet);
}

/** Single inputs always; those in rows where they hold something. */
export function inputRows(
  model: Model,
  values: readonly Value[],
  { trail = [] }: Pick<Identity, "trail">,
): Content[][] {
  const origins = inputOrigins(model, values, trail);
  return model.cells.flatMap((cell) => {
    const origin = origins.get(cell.id);
    const value = recorded(cell, values[cell.index]);
    if (origin === undefined || (cell.table !== undefined && value === null)) return [];
    const { from, by = null, time = null, note = null } = origin;
    return [[null, cell.id, value, unitFor(cell), from, by, time, note, labelOf(cell)]];
  });
}

/** The figures that came from the office book, row by row. */
export function priceRows(
  model: Model,
  values: readonly Value[],
  { book, bookAsOf }: Pick<Identity, "book" | "bookAsOf">,
): Content[][] {
  return model.cells.flatMap((cell) => {
    const value = recorded(cell, values[cell.index]);
    if (cell.declaration.kind !== "book" || value === null) return [];
    const unit = shownUnit(cell.declaration, model.system);
    return [[null, cell.id, value, unit, "office book", book, bookAsOf, null, labelOf(cell)]];
  });
}

const labelOf = ({ declaration }: Cell): string => declaration.label;

function put(sheet: Worksheet, line: number, column: number, value: Content, style: object): void {
  const target = sheet.getCell(line, column);
  target.value = value === "" ? null : value;
  target.style = style;
}
