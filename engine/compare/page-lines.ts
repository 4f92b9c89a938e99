import type { OpenedJob } from "../audit/index.js";
import { CellError, type Value } from "../formula/value.js";
import type { Cell, Model } from "../template/model.js";
import type { Agreed } from "../template/template.js";

/** A line of the agreed page that is not as it was; one side is empty where it came or went. */
export interface LineChange {
  readonly was: string;
  readonly now: string;
}

/** Every line of the agreed page that reads otherwise, came or went, in the page's order. */
export function lineChanges(
  a: OpenedJob,
  b: OpenedJob,
  now: readonly Value[],
  agreed: Agreed,
): LineChange[] {
  const before = linesOf(a, a.values, agreed);
  const after = linesOf(b, now, agreed);
  return [...new Set([...before.keys(), ...after.keys()])]
    .map((id) => ({ was: before.get(id) ?? "", now: after.get(id) ?? "" }))
    .filter((line) => line.was !== line.now);
}

/** What the page says of its own state; undefined where it is fit to be handed out. */
export function draftOf(
  { model }: OpenedJob,
  values: readonly Value[],
  { lines, draftMark }: Agreed,
): string | undefined {
  if (draftMark === undefined) return undefined;
  return cellsOf(model, lines)
    .map(({ index }) => said(values[index] ?? null))
    .find((text) => text.startsWith(draftMark));
}

function cellsOf(model: Model, column: string): readonly Cell[] {
  const [table = "", key = ""] = column.split(".");
  return model.tables.get(table)?.columns.get(key)?.cells ?? [];
}

/** The lines of a page by the id of their cell, without those that only tell the page's state. */
function linesOf(
  { model }: OpenedJob,
  values: readonly Value[],
  { lines, draftMark, marks = [] }: Agreed,
): Map<string, string> {
  return new Map(
    cellsOf(model, lines).flatMap(({ id, index }) => {
      const text = said(values[index] ?? null);
      if (draftMark !== undefined && text.startsWith(draftMark)) return [];
      return [[id, wordsOf(text, marks)] as const];
    }),
  );
}

const said = (value: Value): string =>
  (value instanceof CellError ? value.code : String(value ?? "")).trim();

/** Without the sign that a page puts before an item or a heading. */
function wordsOf(text: string, marks: readonly string[]): string {
  const mark = marks.find((one) => text.startsWith(one));
  return text.slice(mark?.length ?? 0).trim();
}
