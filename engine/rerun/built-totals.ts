import { type AgainstBuilt, isFigure, type JobLine } from "./lines.js";
import { Telling, type Told } from "./telling.js";

/** The cost of a built job by which it is compared: all sums known. */
export interface Compared {
  readonly bid: number;
  readonly now: number;
  readonly made: number;
  readonly kept: number;
  readonly keptNow: number;
  readonly covered?: number;
}

/** Built jobs against what they came to, each job once; only those told whole are compared. */
export interface BuiltTotals {
  /** Lines of the list of built jobs. */
  readonly rows: number;
  readonly compared: number;
  /** By how much the cost came over the bid, and over what would be bid now, as shares: the middle one. */
  readonly overBid: number | undefined;
  readonly overNow: number | undefined;
  /** The same, whether over or under. */
  readonly offBid: number | undefined;
  readonly offNow: number | undefined;
  /** Jobs whose cost stayed within the bid with its contingency. */
  readonly withinBid: number;
  readonly withinNow: number;
  /** Of the jobs with an overrun learned: how many, and how many stayed within what covers one of five. */
  readonly foretold: number;
  readonly withinFifth: number;
  /** Built jobs that are not told whole, or of which the cost is not known. */
  readonly partial: Told;
}

/** A job's sums where all are known and it is told whole. */
export function comparedBuilt(built: JobLine["built"]): Compared | undefined {
  if (built === undefined || "unknown" in built || !built.toldWhole) return undefined;
  const { bid, now, made, kept, keptNow, covered } = built;
  const known = [bid, now, made, kept, keptNow].every(isFigure) && bid !== 0 && now !== 0;
  if (!known) return undefined;
  return {
    ...({ bid, now, made, kept, keptNow } as Compared),
    ...(covered === undefined ? {} : { covered }),
  };
}

export const overOf = (made: number, cost: number): number => made / cost - 1;

/** To a cent: what is the same sum is within it. */
export const isWithin = (made: number, limit: number): boolean => made <= limit + 0.005;

/** Why a built job is not compared; undefined where it is. */
export function notCompared(
  built: AgainstBuilt | { readonly unknown: string },
): string | undefined {
  if ("unknown" in built) return built.unknown;
  if (!built.toldWhole) return built.leftOut;
  return comparedBuilt(built) === undefined ? "its cost cannot be calculated" : undefined;
}

export class BuiltTally {
  #rows = 0;
  readonly #jobs: Compared[] = [];
  readonly #partial = new Telling();

  /** @param counts is it the first file of its job? */
  add({ file, built }: JobLine, counts: boolean): void {
    if (built === undefined) return;
    this.#rows += 1;
    const because = notCompared(built);
    if (because !== undefined) this.#partial.add(`${file}: ${because}`);
    const compared = comparedBuilt(built);
    if (counts && compared !== undefined) this.#jobs.push(compared);
  }

  totals(): BuiltTotals {
    const jobs = this.#jobs;
    const over = (key: "bid" | "now") => jobs.map((one) => overOf(one.made, one[key]));
    const [bid, now] = [over("bid"), over("now")];
    const foretold = jobs.filter(({ covered }) => covered !== undefined);
    const count = (of: readonly Compared[], limit: (one: Compared) => number) =>
      of.filter((one) => isWithin(one.made, limit(one))).length;
    return {
      rows: this.#rows,
      compared: jobs.length,
      overBid: median(bid),
      overNow: median(now),
      offBid: median(bid.map(Math.abs)),
      offNow: median(now.map(Math.abs)),
      withinBid: count(jobs, (one) => one.bid + one.kept),
      withinNow: count(jobs, (one) => one.now + one.keptNow),
      foretold: foretold.length,
      withinFifth: count(foretold, (one) => one.now + (one.covered ?? 0)),
      partial: this.#partial,
    };
  }
}

/** The middle one, or the mean of the two in the middle. */
function median(values: readonly number[]): number | undefined {
  if (values.length === 0) return undefined;
  const sorted = [...values].sort((a, b) => a - b);
  const [low, high] = [(values.length - 1) / 2, values.length / 2].map(Math.floor);
  return ((sorted[low as number] as number) + (sorted[high as number] as number)) / 2;
}
