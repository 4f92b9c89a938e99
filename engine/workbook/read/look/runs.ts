import { booleanOf } from "../text.js";
import type { Attributes } from "../xml.js";

/** Smaller than this, in points, is not meant to be read. */
const leastSize = 6;

/** Does a property of a run (the name of its element) make a part of a text hard to see, or mean other than it says? */
export function setsApart(property: string, { val, rgb, theme }: Attributes): boolean {
  switch (property) {
    case "strike":
      return val === undefined || booleanOf(val.value) === true;
    case "vertAlign":
      return val?.value !== "baseline";
    case "sz":
      return Number(val?.value) < leastSize;
    case "color":
      return theme?.value === "0" || (rgb !== undefined && isPale(rgb.value.slice(-6)));
    default:
      return false;
  }
}

/** Near white. */
const isPale = (color: string): boolean =>
  [0, 2, 4].every((at) => Number.parseInt(color.slice(at, at + 2), 16) > 200);
