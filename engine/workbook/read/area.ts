import { type Position, positionOf } from "./address.js";

/** A rectangle of cells. */
export interface Area {
  readonly from: Position;
  readonly to: Position;
}

/** Reads `B4:B9` or `D4`. Undefined for anything else. */
export function areaOf(text: string): Area | undefined {
  const [first = "", second = first] = text.split(":");
  const [from, to] = [positionOf(first), positionOf(second)];
  return from === undefined || to === undefined ? undefined : { from, to };
}

/** Reads a list of areas such as `B4:B9 D4` (ISO/IEC 29500-1 §18.18.76); what is none is left out. */
export const areasOf = (list: string): Area[] =>
  list.split(/\s+/).flatMap((text) => areaOf(text) ?? []);
