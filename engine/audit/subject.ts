import { CellError, type ErrorCode, type Value } from "../formula/value.js";
import { shown } from "../job/shown-value.js";
import type { Cell, Model } from "../template/model.js";
import type { MatchedCell, WorkbookMatch } from "../workbook/match/result.js";
import type { CellContent, CellValue, WorkbookContent } from "../workbook/read/content.js";
import type { Finding } from "./finding.js";

/** What the checks of an audit look at. */
export interface Subject {
  readonly content: WorkbookContent;
  readonly model: Model;
  readonly match: WorkbookMatch;
}

/** A value as the workbook holds it, as one of ours. */
export function heldValue(value: CellValue): Value {
  if (value === "") return null;
  if (typeof value !== "object" || value === null) return value;
  return new CellError(value.error as ErrorCode);
}

/** As `heldValue`, for a cell of the model: some programs store yes and no as 1 and 0. */
export function heldBy(cell: Cell, value: CellValue): Value {
  const held = heldValue(value);
  const counted = cell.declaration.quantity.kind === "yesno" && (held === 1 || held === 0);
  return counted ? held === 1 : held;
}

/** The formula in a given cell; LibreOffice stores a plain yes or no as `TRUE()` or `FALSE()`. */
export function formulaIn(cell: Cell, { formula }: CellContent): string | undefined {
  const plain =
    cell.declaration.quantity.kind === "yesno" && /^(TRUE|FALSE)\(\)$/i.test(formula ?? "");
  return plain ? undefined : formula;
}

/** For people: `12.5`, `"clay"`, `TRUE`, `#REF!`, `nothing`. */
export function said(value: Value): string {
  if (value === null) return "nothing";
  if (value instanceof CellError) return value.code;
  if (typeof value === "string") return JSON.stringify(short(value));
  if (typeof value === "boolean") return value ? "TRUE" : "FALSE";
  return String(Number(value.toPrecision(15)));
}

/**
 * A value of a cell as people read it there, `17.6%` or `$1,234`; with all its digits where it could not be told from
 * the other value that it is held against.
 */
export function saidIn(model: Model, cell: Cell, value: Value, other: Value = null): string {
  if (typeof value === "string" && cell.declaration.quantity.kind === "date") return short(value);
  if (typeof value !== "number" && typeof value !== "boolean") return said(value);
  const plain = shown(model, cell, value);
  if (other === null || typeof other !== typeof value || other === value) return plain;
  return shown(model, cell, other) === plain ? said(value) : plain;
}

export const short = (text: string, most = 160): string =>
  text.length <= most ? text : `${text.slice(0, most - 1)}…`;

export const placeOf = ({ sheet, address }: Pick<MatchedCell, "sheet" | "address">): string =>
  `${sheet}!${address}`;

/** Do two values agree: numbers within 1e-9 of their size, texts but for spaces around them, all else exactly? */
export function agree(a: Value, b: Value): boolean {
  if (typeof a === "number" && typeof b === "number") {
    return Math.abs(a - b) <= 1e-9 * Math.max(1, Math.abs(a), Math.abs(b));
  }
  if (a instanceof CellError && b instanceof CellError) return a.code === b.code;
  return bare(a) === bare(b);
}

/** Some programs store an empty text as a blank, and lose the spaces at the ends of a text. */
function bare(value: Value): Value {
  return typeof value === "string" ? value.trim() || null : value;
}

/** Findings that say the same of many cells, or of many other `things`, beyond `most` told as one. */
export function grouped(findings: readonly Finding[], most: number, things = "cells"): Finding[] {
  if (findings.length <= most) return [...findings];
  const [{ name: _, ...first }] = findings as [Finding, ...Finding[]];
  const places = findings.slice(0, 12).map(({ where, name }) => name ?? where);
  const more =
    findings.length > places.length ? `, and ${findings.length - places.length} more` : "";
  return [
    {
      ...first,
      names: findings.map(({ where, name }) => name ?? where),
      where: `${findings.length} ${things}: ${places.join(", ")}${more}`,
      found: `the first of them: ${first.found}`,
    },
  ];
}
