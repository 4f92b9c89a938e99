import { normalInverse } from "../formula/arithmetic/normal.js";
import type { Value } from "../formula/value.js";
import type { RolePlan } from "../template/role-plan.js";

/** How far the work of a bid may run over its plan, as the office's own built jobs showed. */
export interface LearnedOverrun {
  /** As shares: in half of the jobs, and in one of five. */
  readonly half: number;
  readonly fifth: number;
  /** On how many jobs it rests, and in words where it comes from. */
  readonly jobs: number;
  readonly source: string;
  /** The cell of money that goes with the work. */
  readonly moves: string;
  /** Ranges of the job that say the same by assumption: not drawn beside it. */
  readonly notDrawn: readonly string[];
}

/** The overrun that the job's office book carries; undefined where it learned none. */
export function learnedOverrun(
  { overrun }: RolePlan,
  values: readonly Value[],
  ranged: readonly string[],
): LearnedOverrun | undefined {
  if (overrun === undefined) return undefined;
  const [half, fifth, jobs] = [overrun.half, overrun.fifth, overrun.jobs].map(
    ({ index }) => values[index],
  );
  if (typeof half !== "number" || typeof fifth !== "number" || fifth < half) return undefined;
  if (typeof jobs !== "number" || jobs < 1) return undefined;
  const source = values[overrun.source.index];
  const isOfPace = (name: string) => overrun.pace.includes(name.replace(/\[\d+\]$/, ""));
  return {
    ...{ half, fifth, jobs, source: typeof source === "string" ? source : "" },
    moves: overrun.moves.id,
    notDrawn: ranged.filter(isOfPace),
  };
}

/**
 * The overrun below which a share `p` of the jobs stays: the lognormal distribution that has `half` as its median and `fifth`
 * as its 80th percentile (NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.6.6.9, from memory). `fifth` was found by Student's
 * distribution; beyond it this one ends a little sooner.
 */
export function overrunAt({ half, fifth }: Pick<LearnedOverrun, "half" | "fifth">, p: number) {
  const center = Math.log1p(half);
  const deviation = (Math.log1p(fifth) - center) / normalInverse(0.8);
  return Math.expm1(center + deviation * normalInverse(p));
}
