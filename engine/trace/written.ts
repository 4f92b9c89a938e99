import { CellError, type Value } from "../formula/value.js";
import { writtenDate } from "../job/date.js";

/** How values of a cell or parameter are written within a formula. */
export interface Manner {
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
export function write(value: Value, manner: Manner, rounding: Rounding): Written {
  const { text, value: stands } = bare(value, manner, rounding);
  if (typeof value !== "number") return { text, value };
  const unit = manner.kind === "date" ? writtenDate(value) : manner.unit;
  const marked = unit === "" || manner.percent ? text : `${text} [${unit}]`;
  return { text: value < 0 ? `(${marked})` : marked, value: stands };
}

/** Writes a column, its unit once: `{1;2;3} [ft]`; after `most` rows comes an ellipsis. */
export function writeColumn(
  values: readonly Value[],
  manner: Manner,
  rounding: Rounding,
  most = Number.POSITIVE_INFINITY,
): { text: string; brief: string; values: Value[] } {
  const all = values.map((value) => bare(value, manner, rounding));
  const texts = all.map(({ text }) => text);
  const unit =
    manner.unit === "" || manner.percent || manner.kind !== "number" ? "" : ` [${manner.unit}]`;
  const short = texts.length <= most ? texts : [...texts.slice(0, most - 1), "…", texts.at(-1)];
  return {
    text: `{${texts.join(";")}}${unit}`,
    brief: `{${short.join(";")}}${unit}`,
    values: all.map(({ value }) => value),
  };
}

function bare(value: Value, manner: Manner, rounding: Rounding): Written {
  if (value === null) return { text: "blank", value };
  if (value instanceof CellError) return { text: value.code, value };
  if (typeof value === "string") return { text: `"${value.replaceAll('"', '""')}"`, value };
  if (typeof value === "boolean") return { text: value ? "TRUE" : "FALSE", value };
  if (manner.kind === "date" || rounding === "exact") return { text: String(value), value };
  const scale = manner.percent ? 100 : 1;
  const wanted = value * scale;
  const rounded =
    rounding === "shown"
      ? Number(wanted.toFixed(Math.min(manner.decimals, 100)))
      : Number(wanted.toPrecision(rounding));
  return { text: `${rounded}${manner.percent ? "%" : ""}`, value: rounded / scale };
}
