import { someCodes } from "./lacking.js";
import { type Figures, isFigure, type JobLine } from "./lines.js";
import type { Results } from "./results.js";

export interface Pair {
  readonly before: number;
  readonly now: number;
}

/** Jobs of which something is told one by one: the first so many. */
export interface Told {
  readonly count: number;
  readonly first: readonly string[];
}

const mostTold = 10;

class Telling implements Told {
  count = 0;
  readonly first: string[] = [];

  add(text: string): void {
    this.count += 1;
    if (this.first.length < mostTold) this.first.push(text);
  }
}

/** The figures of a run over all jobs whose old and new price are both known, each job once. */
export interface Totals {
  readonly jobs: number;
  readonly errors: number;
  readonly skipped: number;
  /** Jobs in the totals. */
  readonly compared: number;
  readonly price: Pair;
  readonly cost: Pair;
  /** By label, in the order of the templates. */
  readonly sections: ReadonlyMap<string, Pair>;
  /** By item, the largest first; with `together` for what only several changes make. */
  readonly moved: readonly { readonly item: string; readonly by: number }[];
  readonly movedJobs: number;
  /** Lines of the list of what moved each job. */
  readonly movedRows: number;
  readonly together: number;
  readonly newlyFailing: number;
  readonly jobsNewlyFailing: number;
  /** Checks that fail now of which it is not known whether they did before; and jobs with such. */
  readonly failingUnknown: number;
  readonly jobsFailingUnknown: number;
  readonly mustFailingUnknown: number;
  /** Jobs whose old price is not known, and those whose items the new book lacks: how many, and the first ones. */
  readonly unpriced: Told;
  readonly lacking: Told;
  /** Price books that lay among the jobs. */
  readonly books: readonly string[];
  readonly mustNewlyFailing: number;
  /** Jobs in which a cell holds an error. */
  readonly jobsInError: number;
  readonly expired: number;
  readonly jobsExpired: number;
  readonly duplicates: number;
  /** Jobs calculated by both evaluators. */
  readonly judged: number;
  /** Did the run come to its end? */
  readonly whole: boolean;
}

/** The old figures, where they are known. */
export const beforeOf = (line: JobLine): Figures | undefined =>
  "unknown" in line.before ? undefined : line.before;

/** The checks that held before and fail now. */
export const newlyFailing = ({ failing }: JobLine) =>
  failing.filter(({ before }) => before === "passed");

/** 1 for a job that the totals take in, else 0. */
export const inTotals = (line: JobLine, sameAs: string | undefined): 0 | 1 =>
  sameAs === undefined && comparable(line) ? 1 : 0;

/** May a job's old and new figures be added up with others'? */
function comparable(line: JobLine): boolean {
  const before = beforeOf(line);
  return (
    before !== undefined &&
    [before.price, before.cost, line.now.price, line.now.cost].every(isFigure)
  );
}

/** A figure in a sum: what is no number counts as nothing. */
const added = (value: number | string | undefined): number =>
  value !== undefined && isFigure(value) ? value : 0;

export async function totalsOf(results: Results): Promise<Totals> {
  const price = { before: 0, now: 0 };
  const cost = { before: 0, now: 0 };
  const sections = new Map<string, { before: number; now: number }>();
  const moved = new Map<string, number>();
  const count = {
    compared: 0,
    failing: 0,
    must: 0,
    failingJobs: 0,
    expired: 0,
    expiredJobs: 0,
    inError: 0,
    unknown: 0,
    unknownMust: 0,
    unknownJobs: 0,
  };
  const [unpriced, lacking] = [new Telling(), new Telling()];
  let [together, movedJobs, movedRows] = [0, 0, 0];
  for await (const { line, sameAs } of results.jobs()) {
    const newly = newlyFailing(line);
    const unknown = line.failing.length - newly.length;
    const must = line.failing.filter(({ level }) => level === "must").length;
    const newlyMust = newly.filter(({ level }) => level === "must").length;
    count.failing += newly.length;
    count.must += newlyMust;
    count.failingJobs += newly.length > 0 ? 1 : 0;
    count.unknown += unknown;
    count.unknownMust += must - newlyMust;
    count.unknownJobs += unknown > 0 ? 1 : 0;
    if ("unknown" in line.before) unpriced.add(`${line.file}: ${line.before.unknown}`);
    if (line.missing !== undefined) {
      const { codes, checks } = line.missing;
      const fails =
        checks.length === 0
          ? ""
          : ` (for that alone ${checks.length === 1 ? "1 check fails" : `${checks.length} checks fail`})`;
      lacking.add(`${line.file}: ${someCodes(codes)}${fails}`);
    }
    count.inError += line.inError === undefined ? 0 : 1;
    count.expired += line.expired.length;
    count.expiredJobs += line.expired.length > 0 ? 1 : 0;
    for (const label of Object.keys(line.now.sections)) {
      if (!sections.has(label)) sections.set(label, { before: 0, now: 0 });
    }
    if (sameAs !== undefined) continue;
    if (line.moved !== undefined) {
      movedJobs += 1;
      movedRows += line.moved.items.length + 1;
      together += line.moved.together;
      for (const { item, by } of line.moved.items) moved.set(item, (moved.get(item) ?? 0) + by);
    }
    const before = beforeOf(line);
    if (before === undefined || !comparable(line)) continue;
    count.compared += 1;
    price.before += added(before.price);
    price.now += added(line.now.price);
    cost.before += added(before.cost);
    cost.now += added(line.now.cost);
    for (const [label, pair] of sections) {
      pair.before += added(before.sections[label]);
      pair.now += added(line.now.sections[label]);
    }
  }
  const { ends, runs } = results;
  return {
    jobs: results.count("job"),
    errors: results.count("error"),
    skipped: results.count("skipped"),
    compared: count.compared,
    price,
    cost,
    sections,
    moved: [...moved]
      .map(([item, by]) => ({ item, by }))
      .sort((a, b) => Math.abs(b.by) - Math.abs(a.by) || (a.item < b.item ? -1 : 1)),
    movedJobs,
    movedRows,
    together,
    newlyFailing: count.failing,
    jobsNewlyFailing: count.failingJobs,
    mustNewlyFailing: count.must,
    failingUnknown: count.unknown,
    jobsFailingUnknown: count.unknownJobs,
    mustFailingUnknown: count.unknownMust,
    unpriced,
    lacking,
    books: results.books(),
    jobsInError: count.inError,
    expired: count.expired,
    jobsExpired: count.expiredJobs,
    duplicates: results.duplicates().length,
    judged: results.judged,
    whole: ends.length === runs.length,
  };
}
