/** Where a line (or column) of the template was found, and how many cells say so. */
export interface Sighting {
  readonly from: number;
  readonly to: number;
  readonly weight: number;
}

/**
 * The sightings that agree with one another: inserting and deleting lines keeps their
 * order, so the heaviest chain that rises in both, with the fewest changes of shift, is
 * kept; a name that was pointed elsewhere falls out of it. Returns `to` by `from`.
 */
export function aligned(sightings: readonly Sighting[]): Map<number, number> {
  // where nothing moved, all agree
  if (sightings.every(({ from, to }) => from === to)) {
    return new Map(sightings.map(({ from, to }) => [from, to]));
  }
  const sorted = [...sightings].sort((a, b) => a.from - b.from || a.to - b.to);
  const best: { score: number; before: number }[] = [];
  sorted.forEach((here, i) => {
    let score = worth(here) - (here.to === here.from ? 0 : 1);
    let before = -1;
    for (let j = 0; j < i; j++) {
      const other = sorted[j] as Sighting;
      if (other.from >= here.from || other.to >= here.to) continue;
      const changes = other.to - other.from === here.to - here.from ? 0 : 1;
      const total = (best[j]?.score ?? 0) + worth(here) - changes;
      if (total > score) {
        score = total;
        before = j;
      }
    }
    best.push({ score, before });
  });
  let at = best.reduce((top, one, i) => (one.score > (best[top]?.score ?? -1) ? i : top), 0);
  const kept = new Map<number, number>();
  while (at >= 0 && at < sorted.length) {
    const one = sorted[at] as Sighting;
    kept.set(one.from, one.to);
    at = best[at]?.before ?? -1;
  }
  return kept;
}

/** Sightings of the same move as one, of their weight together. */
export function summed(sightings: readonly Sighting[]): Sighting[] {
  const sums = new Map<number, { from: number; to: number; weight: number }>();
  for (const { from, to, weight } of sightings) {
    const key = from * mostLines + to;
    const known = sums.get(key);
    if (known === undefined) sums.set(key, { from, to, weight });
    else known.weight += weight;
  }
  return [...sums.values()];
}

/** More lines than a sheet has. */
const mostLines = 2 ** 21;

/** Two changes of shift (away and back) cost more than one cell is worth. */
const worth = ({ weight }: Sighting): number => weight * 1.5;

/** The shift that holds at a line between known ones: that of the nearest above it, then below. */
export function shiftsAt(known: ReadonlyMap<number, number>, line: number): number[] {
  const own = known.get(line);
  if (own !== undefined) return [own - line];
  let above: number | undefined;
  let below: number | undefined;
  for (const from of known.keys()) {
    if (from <= line && (above === undefined || from > above)) above = from;
    if (from >= line && (below === undefined || from < below)) below = from;
  }
  const shifts = [above, below].flatMap((from) =>
    from === undefined ? [] : [(known.get(from) as number) - from],
  );
  return shifts.length === 0 ? [0] : [...new Set(shifts)];
}
