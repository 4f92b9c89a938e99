import type { Look } from "./sheet.js";

const known = new WeakMap<Look, Map<string, Look>>();

/**
 * A look with something changed, the same one for the same change: cells that look alike share it, and it is spelled
 * once.
 */
export function changed(look: Look, change: Look): Look {
  const ofLook = known.get(look) ?? new Map<string, Look>();
  known.set(look, ofLook);
  const key = JSON.stringify(change);
  const made = ofLook.get(key) ?? { ...look, ...change };
  ofLook.set(key, made);
  return made;
}
