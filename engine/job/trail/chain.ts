import { canonicalJson, sha256 } from "./canonical.js";
import { type Change, kept, type TrailEntry } from "./entry.js";

/** What stands for the hash of the entry before the first, and for the head of an empty trail. */
export const noHash = "none";

/** The hash of an entry that follows the one with the hash `before`. */
export function hashOf(entry: Omit<TrailEntry, "hash">, before: string): string {
  const { number, time, by, input, old, new: now, unit, from, note } = entry;
  return sha256(
    canonicalJson({ before, number, time, by, input, old, new: now, unit, from, note }),
  );
}

/** The trail with changes put at its end; the entries there are stay as they are. */
export function appended(trail: readonly TrailEntry[], changes: readonly Change[]): TrailEntry[] {
  const grown = [...trail];
  for (const change of changes) {
    const entry = {
      number: grown.length + 1,
      ...change,
      old: kept(change.old),
      new: kept(change.new),
    };
    grown.push({ ...entry, hash: hashOf(entry, headOf(grown)) });
  }
  return grown;
}

/** The hash of the last entry, which stands for the whole trail. */
export const headOf = (trail: readonly TrailEntry[]): string => trail.at(-1)?.hash ?? noHash;
