import type { Template } from "../../engine/template/index.js";
import { bookOf } from "../parts/assemble.js";
import type { Part } from "../parts/part.js";
import { bubblingParts } from "./bubbling-parts.js";
import { waterfallParts } from "./waterfall-parts.js";

type Sharer = Pick<Template, "name" | "sheets" | "office">;

const parts: Readonly<Record<string, readonly Part[]>> = {
  waterfall: waterfallParts,
  "bubbling-stones": bubblingParts,
};
const made = new Map<string, Sharer>();

/** What the templates beside the named one ask of an office book: one book serves them all. */
export function bookSharers(beside: string): Sharer[] {
  const others = Object.keys(parts).filter((name) => name !== beside);
  return others.map((name) => {
    const sharer = made.get(name) ?? bookOf(name, parts[name] ?? []);
    made.set(name, sharer);
    return sharer;
  });
}
