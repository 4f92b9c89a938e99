import { Cone } from "../../../engine/evaluate/cone.js";
import type { Value } from "../../../engine/formula/value.js";
import type { RowValues } from "../../../engine/job/record.js";
import { inputValues } from "../../../engine/job/values.js";
import { compile } from "../../../engine/template/compile.js";
import { type Cell, columnOf, type Model } from "../../../engine/template/model.js";
import { randomFrom } from "../../../engine/weigh/random.js";
import { learning } from "../../../sheets/learning/learning.js";

/** Jobs of invented offices: what each rate truly is, and what built jobs show of it. Seeded: a run is like the last. */
export interface Simulated {
  /** How many rates, each with jobs of its own. */
  readonly rates: number;
  readonly jobs: number;
  /** The log of a true rate over the book's, and the true spread between jobs, for each rate. */
  readonly truth: (draw: Draw) => { readonly theta: number; readonly sigma: number };
  /** Years ago that jobs ended, at most. */
  readonly oldest?: number;
  readonly rules?: Readonly<Record<string, number>>;
}

export interface Draw {
  readonly uniform: () => number;
  readonly normal: () => number;
  /** The sum of so many squares of normal draws. */
  readonly chiSquare: (freedom: number) => number;
}

/** Normal draws by the way of Box and Muller (Annals of Mathematical Statistics 29, 1958, from memory). */
export function drawFrom(seed: number): Draw {
  const uniform = randomFrom(seed);
  const normal = () => Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform());
  const chiSquare = (freedom: number) =>
    Array.from({ length: freedom }, normal).reduce((sum, x) => sum + x * x, 0);
  return { uniform, normal, chiSquare };
}

export interface LearnedRate {
  readonly code: string;
  readonly book: number;
  readonly theta: number;
  readonly sigma: number;
  readonly rate: number;
  readonly low: number;
  readonly high: number;
  readonly nextLow: number;
  readonly nextHigh: number;
  readonly spread: number;
  readonly jobs: number;
}

export const halfHours = 4;
export const learnedOn = "2027-03-01";
const serialOfLearnedOn = 46447;

const models = new Map<number, Model>();

/** The template with room for so many rows, compiled once. */
export function modelFor(rows: number): Model {
  const known = models.get(rows) ?? compile(learning(rows), "us");
  models.set(rows, known);
  return known;
}

const asked = [
  ...["learned.rate", "learned.low", "learned.high", "learned.jobs"],
  ...["spreads.next_low", "spreads.next_high", "spreads.spread"],
];
const cones = new Map<Model, Cone>();

/** What is asked of rates alone: a few thousand formulas, and of those what changed from one office to the next. */
function coneOf(model: Model): Cone {
  const cells = asked.flatMap((name) => cellsOf(model, name));
  const known =
    cones.get(model) ??
    new Cone(
      model,
      cells.map(({ id }) => id),
    );
  cones.set(model, known);
  return known;
}

const dayBefore = (years: number): string =>
  new Date((serialOfLearnedOn - 25569 - Math.round(years * 365.25)) * 86_400_000)
    .toISOString()
    .slice(0, 10);

/** The rows of a workbook, and what is true of each of its rates. */
export function simulate({ rates, jobs, truth, oldest = 0 }: Simulated, draw: Draw) {
  const learned: RowValues[] = [];
  const evidence: RowValues[] = [];
  const truths: { theta: number; sigma: number; book: number }[] = [];
  for (let i = 0; i < rates; i++) {
    const { theta, sigma } = truth(draw);
    const book = 0.5 + 9.5 * draw.uniform();
    const code = `rate-${i}`;
    learned.push({ code, means: `Invented rate ${i}`, unit: "yd³/hour", book_rate: book });
    truths.push({ theta, sigma, book });
    for (let j = 0; j < jobs; j++) {
      const bookHours = 2 + 58 * draw.uniform() ** 2;
      // a short task strays more: the weight by size is the inverse of this
      const noise = sigma * Math.sqrt(1 + halfHours / bookHours) * draw.normal();
      const factor = 1 + draw.uniform();
      evidence.push({
        job: `J-${j}`,
        task: `Task ${i}`,
        ended: dayBefore(oldest * draw.uniform()),
        code,
        method: "machine",
        quantity: (bookHours * book) / factor,
        unit: "yd³",
        hours: bookHours / Math.exp(theta + noise),
        time_factor: factor,
      });
    }
  }
  const whole = Array.from({ length: jobs }, (_, j) => ({ job: `J-${j}`, ended: learnedOn }));
  return { learned, evidence, whole, truths };
}

/** A job record's inputs as values of a model. */
export function valuesFor(
  model: Model,
  inputs: Readonly<Record<string, number | string | readonly RowValues[]>>,
): Value[] {
  const { name, version } = model.template;
  return inputValues(model, {
    ...{ rillbook: 1, job: "LEARNED", template: name, version, units: model.system },
    inputs: { learned_on: learnedOn, ...inputs },
  });
}

function cellsOf(model: Model, name: string): readonly Cell[] {
  const [table = "", key = ""] = name.split(".");
  return columnOf(model, table, key).cells;
}

export const column = (model: Model, values: readonly Value[], name: string): Value[] =>
  cellsOf(model, name).map(({ index }) => values[index] as Value);

/** Learns all rates of simulated jobs in one workbook. */
export function learn(rows: number, simulated: Simulated, draw: Draw): LearnedRate[] {
  const model = modelFor(rows);
  const { learned, evidence, whole, truths } = simulate(simulated, draw);
  const given = valuesFor(model, {
    ...{ half_life: 100, half_hours: halfHours, ...simulated.rules },
    ...{ book_rates: learned, evidence, job_list: whole },
  });
  const values = coneOf(model).calculate(given);
  const [rate, low, high, counted, next, top, spread] = asked.map(
    (name) => column(model, values, name) as number[],
  );
  return truths.map(({ theta, sigma, book }, i) => ({
    code: `rate-${i}`,
    ...{ book, theta, sigma },
    rate: rate?.[i] as number,
    low: low?.[i] as number,
    high: high?.[i] as number,
    nextLow: next?.[i] as number,
    nextHigh: top?.[i] as number,
    spread: spread?.[i] as number,
    jobs: counted?.[i] as number,
  }));
}
