import type { Tree } from "../formula/tree.js";
import type { Model } from "../template/model.js";
import { precedents } from "../template/order.js";

const known = new WeakMap<Model, readonly (readonly number[])[]>();

/** For each formula cell, in order of calculation, the indexes of the cells that it reads. */
export function links(model: Model): readonly (readonly number[])[] {
  const found = known.get(model);
  if (found !== undefined) return found;
  const made = model.order.map((cell) =>
    precedents(model, cell.native as Tree, cell.row ?? 0).map(({ index }) => index),
  );
  known.set(model, made);
  return made;
}
