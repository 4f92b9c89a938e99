import { CellError, type Value } from "../formula/value.js";
import { writtenDate } from "../job/date.js";

/** How values of a cell or parameter are written within a formula. */
export interface NumberStyle {
  readonly unit: string;
  readonly kind: "number" | "text" | "yesno" | "date";
  readonly percent: boolean;
  /** As the workbook shows it. */
  readonly decimals: number;
}

/**
 * How far numbers are rounded: to the decimals of the workbook, to a count of significant digits,
 * or not at all.
 */
export type Rounding = "shown" | number | "exact";

export const roundings: readonly Rounding[] = ["shown", 5, 6, 7, 8, 10, 12, 15, "exact"];

/** A value as it stands in a formula, and the value that this text stands for. */
export interface Written {
  readonly text: string;
  readonly value: Value;
}

/** Writes one value: `12.5 [ft]`, `35%`, `"clay"`, `46351 [2026-11-25]`. */
export function write(value: Value, style: NumberStyle, rounding: Rounding): Written {
  const { text, value: stands } = bare(value, style, rounding);
  if (typeof value !== "number") return { text, value };
  const unit = style.kind === "date" ? dayOf(value) : style.unit;
  const marked = unit === "" || style.percent ? text : `${text} [${unit}]`;
  return { text: value < 0 ? `(${marked})` : marked, value: stands };
}

const dayOf = (serial: number) => (serial === 0 ? "no date" : writtenDate(serial));

/** Writes a column, its unit once: `{1;2;3} [ft]`; after `most` rows comes an ellipsis. */
export function writeColumn(
  values: readonly Value[],
  style: NumberStyle,
  rounding: Rounding,
  most = Number.POSITIVE_INFINITY,
): { text: string; brief: string; values: Value[] } {
  const all = values.map((value) => bare(value, style, rounding));
  const texts = all.map(({ text }) => text);
  const unit =
    style.unit === "" || style.percent || style.kind !== "number" ? "" : ` [${style.unit}]`;
  const short = texts.length <= most ? texts : [...texts.slice(0, most - 1), "…", texts.at(-1)];
  return {
    text: `{${texts.join(";")}}${unit}`,
    brief: `{${short.join(";")}}${unit}`,
    values: all.map(({ value }) => value),
  };
}

function bare(value: Value, style: NumberStyle, rounding: Rounding): Written {
  if (value === null) return { text: "blank", value };
  if (value instanceof CellError) return { text: value.code, value };
  if (typeof value === "string") return { text: `"${value.replaceAll('"', '""')}"`, value };
  if (typeof value === "boolean") return { text: value ? "TRUE" : "FALSE", value };
  if (style.kind === "date" || rounding === "exact") return { text: String(value), value };
  const scale = style.percent ? 100 : 1;
  const wanted = value * scale;
  const rounded =
    rounding === "shown"
      ? Number(wanted.toFixed(Math.min(style.decimals, 100)))
      : Number(wanted.toPrecision(rounding));
  return { text: `${rounded}${style.percent ? "%" : ""}`, value: rounded / scale };
}
