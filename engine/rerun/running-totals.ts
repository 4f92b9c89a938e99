import { BuiltTally, type BuiltTotals } from "./built-totals.js";
import { someCodes } from "./lacking.js";
import { type ErrorLine, type Figures, isFigure, type JobLine } from "./lines.js";
import type { Results } from "./results.js";
import { Telling, type Told } from "./telling.js";

export type { Told } from "./telling.js";

export interface Pair {
  readonly before: number;
  readonly now: number;
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
  /** Files that gave no result, each with the reason. */
  readonly failed: Told;
  /** Office books that lay among the jobs. */
  readonly books: readonly string[];
  /** Workbooks of learned rates that lay among the jobs. */
  readonly learned: readonly string[];
  readonly built: BuiltTotals;
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

/** Reads a run's lines once, and adds them up. */
export async function totalsOf(results: Results): Promise<Totals> {
  const tally = new Tally();
  for await (const { line, sameAs } of results.jobs()) {
    tally.addChecks(line);
    tally.addQuotes(line);
    tally.tell(line);
    tally.nameSections(line);
    tally.addBuilt(line, sameAs === undefined);
    if (sameAs !== undefined) continue;
    tally.addMoved(line);
    tally.addMoney(line);
  }
  const failed = new Telling();
  for await (const { line } of results.each("error")) {
    const { file, message } = line as ErrorLine;
    failed.add(message.includes(file) ? message : `${file}: ${message}`);
  }
  const { ends, runs } = results;
  return {
    ...tally.totals(),
    failed,
    jobs: results.count("job"),
    errors: results.count("error"),
    skipped: results.count("skipped"),
    books: results.noJobs("office book"),
    learned: results.noJobs("learned rates"),
    duplicates: results.duplicates().length,
    judged: results.judged,
    whole: ends.length === runs.length,
  };
}

type Sum = { -readonly [key in keyof Pair]: Pair[key] };
type Counted = { -readonly [key in CountName]: number };
type CountName = {
  [key in keyof Totals]: Totals[key] extends number ? key : never;
}[keyof Totals];

/** Adds up the lines of a run, one after another. */
class Tally {
  private readonly price: Sum = { before: 0, now: 0 };
  private readonly cost: Sum = { before: 0, now: 0 };
  private readonly sections = new Map<string, Sum>();
  private readonly moved = new Map<string, number>();
  private readonly unpriced = new Telling();
  private readonly lacking = new Telling();
  private readonly built = new BuiltTally();
  private readonly count: Omit<Counted, "jobs" | "errors" | "skipped" | "duplicates" | "judged"> = {
    compared: 0,
    movedJobs: 0,
    movedRows: 0,
    together: 0,
    newlyFailing: 0,
    jobsNewlyFailing: 0,
    mustNewlyFailing: 0,
    failingUnknown: 0,
    jobsFailingUnknown: 0,
    mustFailingUnknown: 0,
    jobsInError: 0,
    expired: 0,
    jobsExpired: 0,
  };

  addChecks(line: JobLine): void {
    const { count } = this;
    const newly = newlyFailing(line);
    const unknown = line.failing.filter((check) => !newly.includes(check));
    count.newlyFailing += newly.length;
    count.mustNewlyFailing += newly.filter(isMust).length;
    count.jobsNewlyFailing += newly.length > 0 ? 1 : 0;
    count.failingUnknown += unknown.length;
    count.mustFailingUnknown += unknown.filter(isMust).length;
    count.jobsFailingUnknown += unknown.length > 0 ? 1 : 0;
    count.jobsInError += line.inError === undefined ? 0 : 1;
  }

  addQuotes({ expired }: JobLine): void {
    this.count.expired += expired.length;
    this.count.jobsExpired += expired.length > 0 ? 1 : 0;
  }

  /** Jobs whose old price is not known, and jobs whose items the new book lacks. */
  tell({ file, before, missing }: JobLine): void {
    if ("unknown" in before) this.unpriced.add(`${file}: ${before.unknown}`);
    if (missing === undefined) return;
    const many =
      missing.checks.length === 1 ? "1 check fails" : `${missing.checks.length} checks fail`;
    const fails = missing.checks.length === 0 ? "" : ` (for that alone ${many})`;
    this.lacking.add(`${file}: ${someCodes(missing.codes)}${fails}`);
  }

  /** A section is listed also where only jobs that do not count have it. */
  nameSections({ now }: JobLine): void {
    for (const label of Object.keys(now.sections)) {
      if (!this.sections.has(label)) this.sections.set(label, { before: 0, now: 0 });
    }
  }

  addBuilt(line: JobLine, counts: boolean): void {
    this.built.add(line, counts);
  }

  addMoved({ moved }: JobLine): void {
    if (moved === undefined) return;
    this.count.movedJobs += 1;
    this.count.movedRows += moved.items.length + 1;
    this.count.together += moved.together;
    for (const { item, by } of moved.items) this.moved.set(item, (this.moved.get(item) ?? 0) + by);
  }

  addMoney(line: JobLine): void {
    const { now } = line;
    const before = beforeOf(line);
    if (before === undefined || !comparable(line)) return;
    this.count.compared += 1;
    addTo(this.price, before.price, now.price);
    addTo(this.cost, before.cost, now.cost);
    for (const [label, sum] of this.sections) {
      addTo(sum, before.sections[label], now.sections[label]);
    }
  }

  totals() {
    const { price, cost, sections, unpriced, lacking } = this;
    const moved = [...this.moved]
      .map(([item, by]) => ({ item, by }))
      .sort((a, b) => Math.abs(b.by) - Math.abs(a.by) || (a.item < b.item ? -1 : 1));
    const built = this.built.totals();
    return { ...this.count, price, cost, sections, moved, unpriced, lacking, built };
  }
}

const isMust = ({ level }: JobLine["failing"][number]): boolean => level === "must";

function addTo(
  sum: Sum,
  before: number | string | undefined,
  now: number | string | undefined,
): void {
  sum.before += added(before);
  sum.now += added(now);
}
