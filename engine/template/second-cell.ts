import type { Cell, Model } from "./model.js";

/** The input beside another one that takes the inches of a length in feet and inches; most have none. */
export function secondCellOf({ byId }: Model, { id }: Cell): Cell | undefined {
  const second = byId.get(id.replace(/(\[\d+\])?$/, "_plus$1"));
  return second?.declaration.kind === "input" ? second : undefined;
}
