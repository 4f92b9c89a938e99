import type { Value } from "../formula/value.js";
import { openFields } from "../job/missing.js";
import { shownValue } from "../job/shown-value.js";
import { notReady } from "../template/bid-stands.js";
import type { Cell, Model } from "../template/model.js";
import type { Context } from "./context.js";

/** How many of the headline's figures are told. */
const mostFigures = 4;

/**
 * First whether the bid stands, in the words of its own sheet, then its first figures: none while a first
 * field is missing, since a price of what is not yet described would be no price.
 */
export function tellStatus(
  context: Context,
  model: Model,
  values: readonly Value[],
  stands: boolean,
): void {
  const open = openFields(model, values).length;
  if (open > 0) {
    context.verdict(`${notReady}: no price yet, ${open} of the first fields are missing.`, false);
    return;
  }
  const verdict = values[model.byId.get("bid_verdict")?.index as number];
  context.verdict(typeof verdict === "string" ? verdict : "The bid is in error.", stands);
  const cells = model.template.headline.flatMap((name) => model.byId.get(name) ?? []);
  context.out(aligned(cells.slice(0, mostFigures).map((cell) => told(model, values, cell))));
}

const told = (model: Model, values: readonly Value[], cell: Cell): [string, string] => [
  cell.declaration.label,
  shownValue(model, cell, values),
];

/** Lines of a name and its value, the values under one another. */
export function aligned(lines: readonly (readonly [name: string, value: string])[]): string {
  const width = Math.max(0, ...lines.map(([name]) => name.length));
  return lines.map(([name, value]) => `${name.padEnd(width)}  ${value}\n`).join("");
}
