import { Cone, Reach } from "../evaluate/cone.js";
import type { Value } from "../formula/value.js";
import type { Range } from "../job/record.js";
import type { InputDeclaration } from "../template/declare.js";
import type { Cell, Model } from "../template/model.js";
import { type LearnedOverrun, overrunAt } from "./overrun.js";
import { randomFrom } from "./random.js";
import { triangular } from "./triangular.js";

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

/**
 * Draws every ranged input from its triangular distribution, each by itself, and calculates
 * the cost without contingency: the same seed gives the same draws. Whole-number inputs are rounded.
 * Where an overrun was learned, each draw has one of its own, by which the money that goes with the work is more.
 * @param values all values of the calculated job
 * @param limit a sum of money, to tell how many draws stay within it
 * Returns undefined where no draw could be calculated.
 */
export function simulate(
  model: Model,
  values: readonly Value[],
  cost: string,
  contingency: string | undefined,
  ranges: Readonly<Record<string, Range>>,
  draws: number,
  seed: number,
  limit?: number,
  overrun?: LearnedOverrun,
): Spread | undefined {
  // by name, so that the order in the file does not change the draws
  const inputs = Object.keys(ranges)
    .sort()
    .map((name) => {
      const cell = model.byId.get(name) as Cell;
      const { whole = false } = cell.declaration as InputDeclaration;
      return { index: cell.index, range: ranges[name] as Range, whole };
    });
  const targets = [cost, contingency ?? cost, ...(overrun === undefined ? [] : [overrun.moves])];
  const reached = reachOf(model, values, targets, new Set(inputs.map(({ index }) => index)));
  const random = randomFrom(seed);
  const found: number[] = [];
  for (let draw = 0; draw < draws; draw++) {
    const changes = inputs.map(({ index, range, whole }): readonly [number, Value] => {
      const value = triangular(range, random());
      return [index, whole ? Math.round(value) : value];
    });
    const [whole, set, moves = 0] = reached(changes);
    const kept = contingency === undefined ? 0 : set;
    if (typeof whole !== "number" || typeof kept !== "number" || typeof moves !== "number") {
      continue;
    }
    found.push(whole - kept + (overrun === undefined ? 0 : moves * overrunAt(overrun, random())));
  }
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

/** The targets' values under changes of some inputs; without any, those that they have. */
function reachOf(
  model: Model,
  values: readonly Value[],
  targets: readonly string[],
  changing: ReadonlySet<number>,
): (changes: readonly (readonly [number, Value])[]) => readonly Value[] {
  if (changing.size > 0) {
    const reach = new Reach(model, values, targets, new Cone(model, targets, changing));
    return (changes) => reach.next(changes);
  }
  const held = targets.map((name) => values[model.byId.get(name)?.index as number] as Value);
  return () => held;
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
