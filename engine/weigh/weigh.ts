import { fittedTables } from "../book/fill.js";
import type { LoadedJob } from "../book/load-job.js";
import type { Value } from "../formula/value.js";
import type { Model } from "../template/model.js";
import { rolesOf } from "../template/role-plan.js";
import { type Effect, moving, type Swing } from "./effects.js";
import { type LearnedOverrun, learnedOverrun } from "./overrun.js";
import { type Spread, simulate } from "./simulate.js";

/** What a bid's price and cost hang on. */
export interface Weighed {
  readonly job: string;
  readonly price: Value;
  readonly cost: Value;
  /** What the bid keeps for what may go wrong; undefined where the template has none. */
  readonly contingency?: Value;
  readonly effects: readonly Effect[];
  readonly swings: readonly Swing[];
  /** What the office's own jobs say of the work, where its book carries it: the draws have it. */
  readonly overrun?: LearnedOverrun;
  /** Absent where nothing is known to spread, or no draw could be calculated. */
  readonly spread?: Spread;
}

/** The names of the cells that weighing looks at. Throws RillbookError for a template without roles. */
export function weighedCells(model: Model): string[] {
  const { price, cost, contingency, exact, overrun } = rolesOf(model);
  const learned =
    overrun === undefined
      ? []
      : [overrun.half, overrun.fifth, overrun.jobs, overrun.moves, overrun.source];
  return [price, cost, contingency, exact, ...learned].flatMap((cell) => cell?.id ?? []);
}

/**
 * Weighs a job. Throws RillbookError for a template without roles.
 *
 * @param values all values of the calculated job, which are for the caller to have judged
 * @param threads in how many to draw at most; 0: one for each processor
 */
export async function weigh(
  { model, job, book }: Pick<LoadedJob, "model" | "job" | "book">,
  values: readonly Value[],
  draws: number,
  seed: number,
  threads = 1,
): Promise<Weighed> {
  const roles = rolesOf(model);
  const held = ({ index }: { index: number }) => values[index] as Value;
  const price = held(roles.price);
  const cost = held(roles.cost);
  const contingency = roles.contingency === undefined ? undefined : held(roles.contingency);
  const stated = job.ranges ?? {};
  const overrun = learnedOverrun(roles, values, Object.keys(stated));
  const ranges = Object.fromEntries(
    Object.entries(stated).filter(([name]) => !overrun?.notDrawn.includes(name)),
  );
  const limit = typeof cost === "number" ? cost : undefined;
  const exact = (roles.exact ?? roles.price).name;
  const isSpread = Object.keys(ranges).length > 0 || overrun !== undefined;
  const named = { cost: roles.cost.name, contingency: roles.contingency?.name };
  const asked = { ...named, ranges, draws, seed, limit, overrun, threads };
  const drawn = isSpread ? simulate(model, values, asked) : undefined;
  // while threads draw
  const found = moving(model, values, exact, fittedTables(model, book), stated);
  const spread = await drawn;
  return {
    job: job.job,
    price,
    cost,
    ...(contingency === undefined ? {} : { contingency }),
    ...found,
    ...(overrun === undefined ? {} : { overrun }),
    ...(spread === undefined ? {} : { spread }),
  };
}
