import type { Value } from "../formula/value.js";
import { messageName } from "../template/implied-names.js";
import type { Cell, Model } from "../template/model.js";
import { treeValue } from "./tree-value.js";

/** What the sentence of a check says under these values: from the cell beside it, or from its formula. */
export function saidBy(model: Model, cell: Cell, values: readonly Value[]): Value {
  const { name, row, says } = cell;
  if (says !== undefined) return treeValue(model, cell, says, values);
  const id = row === undefined ? messageName(name) : `${messageName(name)}[${row}]`;
  const message = model.byId.get(id);
  if (message === undefined) throw new Error(`The check ${cell.id} has no message.`);
  return values[message.index] as Value;
}
