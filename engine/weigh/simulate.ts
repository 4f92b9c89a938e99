import { narrowed } from "../evaluate/narrowed.js";
import type { Value } from "../formula/value.js";
import type { Range } from "../job/record.js";
import type { InputDeclaration } from "../template/declare.js";
import type { Cell, Model } from "../template/model.js";
import { allDraws } from "./draw-threads.js";
import { type DrawTask, sentValue } from "./draws.js";
import type { LearnedOverrun } from "./overrun.js";

/** How the cost without its contingency spreads where inputs spread over their ranges. */
export interface Spread {
  readonly draws: number;
  readonly seed: number;
  /** Draws that could not be calculated; left out of the figures. */
  readonly failed: number;
  readonly mean: number;
  readonly p10: Percentile;
  readonly p50: Percentile;
  readonly p80: Percentile;
  readonly p90: Percentile;
  /** The share of draws at or under the limit, where one is given. */
  readonly within?: number;
}

/** A percentile, and the values between which it lies with 95 % confidence for so many draws. */
export interface Percentile {
  readonly value: number;
  readonly from: number;
  readonly to: number;
}

/** What is to be drawn. */
interface Asked {
  /** The names of the cells of the cost, and of the contingency within it. */
  readonly cost: string;
  readonly contingency?: string | undefined;
  readonly ranges: Readonly<Record<string, Range>>;
  readonly draws: number;
  readonly seed: number;
  /** A sum of money, to tell how many draws stay within it. */
  readonly limit?: number | undefined;
  readonly overrun?: LearnedOverrun | undefined;
  /** How many at most; 0: one for each processor; 1: in this one. */
  readonly threads: number;
}

/**
 * Draws every ranged input from its triangular distribution, each by itself, and calculates
 * the cost without contingency: the same seed gives the same draws, in any number of threads. Whole-number inputs are rounded.
 * Where an overrun was learned, each draw has one of its own, by which the money that goes with the work is more.
 * @param values all values of the calculated job
 * Returns undefined where no draw could be calculated.
 */
export async function simulate(
  model: Model,
  values: readonly Value[],
  { cost, contingency, ranges, draws, seed, limit, overrun, threads }: Asked,
): Promise<Spread | undefined> {
  // by name, so that the order in the file does not change the draws
  const inputs = Object.keys(ranges)
    .sort()
    .map((name) => {
      const { index, declaration } = model.byId.get(name) as Cell;
      const { whole = false } = declaration as InputDeclaration;
      return { index, range: ranges[name] as Range, whole };
    });
  const indexOf = (name: string) => (model.byId.get(name) as Cell).index;
  const targets = [cost, contingency, overrun?.moves].filter((name) => name !== undefined);
  const changing = new Set(inputs.map(({ index }) => index));
  const task: DrawTask = {
    narrowed: narrowed(model, targets, changing, values),
    values: values.map(sentValue),
    cost: indexOf(cost),
    ...(contingency === undefined ? {} : { contingency: indexOf(contingency) }),
    ...(overrun === undefined ? {} : { overrun, moves: indexOf(overrun.moves) }),
    ...{ inputs, draws, seed },
  };
  const found = (await allDraws(task, threads)).flatMap((block) =>
    [...block].filter((value) => !Number.isNaN(value)),
  );
  if (found.length === 0) return undefined;
  const sorted = Float64Array.from(found).sort();
  const mean = found.reduce((sum, value) => sum + value, 0) / found.length;
  const at = (p: number) => percentile(sorted, p);
  const failed = draws - found.length;
  return {
    draws,
    seed,
    failed,
    mean,
    p10: at(0.1),
    p50: at(0.5),
    p80: at(0.8),
    p90: at(0.9),
    ...(limit === undefined ? {} : { within: shareUnder(found, limit) }),
  };
}

/**
 * The value at rank n*p, rounded up, of sorted values; its confidence from the normal
 * approximation of the binomial rank (Conover, Practical Nonparametric Statistics, from memory).
 */
export function percentile(sorted: Float64Array, p: number): Percentile {
  const n = sorted.length;
  const at = (rank: number) => sorted[Math.min(Math.max(Math.ceil(rank), 1), n) - 1] as number;
  const margin = 1.96 * Math.sqrt(n * p * (1 - p));
  // a rank that is whole but for binary error is that rank
  const rank = n * p - 1e-9;
  return { value: at(rank), from: at(rank - margin), to: at(rank + margin) };
}

/** The share of draws at or under a sum of money. */
const shareUnder = (values: readonly number[], limit: number): number =>
  values.filter((value) => value <= limit).length / values.length;
