import { hashOf, headOf, noHash } from "./chain.js";
import type { TrailEntry } from "./entry.js";

/** What is wrong with a trail. */
export interface TrailFault {
  readonly kind: "number" | "hash" | "head" | "time";
  /** The place in the list, from 1; absent where the trail as a whole is meant. */
  readonly place?: number;
  readonly sentence: string;
}

/**
 * Looks whether a trail is as it was written: numbers without gaps, each entry true to its
 * hash and to the entry before, and the last one the known head, where one is known.
 * An edited entry is told by its own place; an entry edited with its hash made anew, taken
 * out or put in, by the place that follows.
 *
 * @param head the hash kept elsewhere (in the workbook's properties), or undefined
 */
export function verifyTrail(trail: readonly TrailEntry[], head?: string): TrailFault[] {
  const faults: TrailFault[] = [];
  let before = noHash;
  let expected = 1;
  trail.forEach((entry, i) => {
    const place = i + 1;
    if (entry.number !== expected) {
      faults.push({
        kind: "number",
        place,
        sentence: `Entry ${place} of the trail has the number ${entry.number}, but ${expected} comes next: entries were taken out, put in or moved.`,
      });
    }
    expected = entry.number + 1;
    if (entry.hash !== hashOf(entry, before)) {
      faults.push({
        kind: "hash",
        place,
        sentence: `Entry ${place} of the trail (${entry.input}) does not fit its hash: it, or the entry before it, was changed after it was written.`,
      });
    }
    before = entry.hash;
  });
  if (head !== undefined && headOf(trail) !== head) faults.push(headFault(trail, head));
  return faults;
}

/**
 * Where time runs backwards: entries that say they were made before the one above them. A clock
 * set wrong does it too, so a person should look.
 */
export function backwards(trail: readonly TrailEntry[]): TrailFault[] {
  return trail.flatMap((entry, i): TrailFault[] => {
    const before = trail[i - 1];
    if (before === undefined || entry.time >= before.time) return [];
    const sentence = `Entry ${i + 1} of the trail (${entry.input}) is of ${entry.time}, before entry ${i} of ${before.time}: time runs backwards.`;
    return [{ kind: "time", place: i + 1, sentence }];
  });
}

function headFault(trail: readonly TrailEntry[], head: string): TrailFault {
  const count = trail.length === 1 ? "1 entry" : `${trail.length} entries`;
  const sentence = trail.some(({ hash }) => hash === head)
    ? `The trail has entries after the one (${head.slice(0, 8)}) it is said to end with.`
    : `The trail of ${count} does not end with the entry (${head.slice(0, 8)}) it is said to end with: it was cut off or replaced.`;
  return { kind: "head", sentence };
}
