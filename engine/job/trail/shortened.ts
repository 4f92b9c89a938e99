import { RillbookError } from "../../errors.js";
import { appended, headOf } from "./chain.js";
import type { TrailEntry } from "./entry.js";
import { longestNote } from "./schema.js";

/**
 * The last entry of each input, in the order in which they were made, in a chain of their own: where each value comes
 * from is told as before, and what it was in between is not. A note says of which trail that is what is left. Throws
 * RillbookError where no note has room for it.
 */
export function shortened(trail: readonly TrailEntry[], file: string): TrailEntry[] {
  if (trail.length === 0) return [];
  const last = new Map(trail.map((entry) => [entry.input, entry]));
  const left = trail.filter((entry) => last.get(entry.input) === entry);
  const mark = `left of a trail of ${trail.length} entries that ends with ${headOf(trail)}`;
  const noted = left.map(({ note }) => (note === undefined ? mark : `${note}; ${mark}`));
  const place = noted.findLastIndex((note) => note.length <= longestNote);
  if (place < 0) {
    throw new RillbookError(
      "trail-too-long",
      `The trail of ${file} cannot be shortened: no note of its last entries has room for ${mark.length} characters more. Give one input again with a shorter note (rillbook set), then shorten it.`,
    );
  }
  return appended(
    [],
    left.map(({ number: _, hash: __, ...entry }, i) =>
      i === place ? { ...entry, note: noted[i] as string } : entry,
    ),
  );
}
