import type { LoadedJob } from "../book/load-job.js";
import { RillbookError } from "../errors.js";
import { suggestion } from "../formula/suggest.js";
import type { Value } from "../formula/value.js";
import type { TrailEntry } from "../job/trail/entry.js";
import type { Model } from "../template/model.js";
import type { Identity } from "../workbook/write/identity.js";

/** A check that says no, with what it says. */
export interface FailedCheck {
  /** The cell: `strong_enough`, `runs.not_long[2]`. */
  readonly name: string;
  /** `must`: the bid does not stand. `look`: a warning. */
  readonly level: "must" | "look";
  readonly message: string;
}

/** A calculated job. */
export interface Bid {
  readonly model: Model;
  /** A value for each cell of the model, by its index; `valueAt` finds them by name. */
  readonly values: readonly Value[];
  readonly trail: readonly TrailEntry[];
  /** The office book: `name, as of date`. */
  readonly book: string;
  /** What a workbook of it says of itself. */
  readonly identity: Identity;
  /** No check of level `must` fails, no cell is in error, no input is missing. */
  readonly stands: boolean;
  readonly failed: readonly FailedCheck[];
  /** Names of the inputs that are missing, in the order in which the sheets ask for them. */
  readonly missing: readonly string[];
  /** Names of the cells in which errors arose. */
  readonly inError: readonly string[];
}

/**
 * Calculates a job by both evaluators, which come from the same formulas by different ways. Rejects with
 * RillbookError, code `evaluators-differ`, where they do not agree within 1e-9.
 */
export async function calculate(job: LoadedJob): Promise<Bid> {
  const { calculate: both } = await import("../evaluate/calculate.js");
  return bidOf(job, both(job.model, job.given));
}

/** The same by the fast evaluator alone: milliseconds a job once the template is compiled. */
export async function calculateFast(job: LoadedJob): Promise<Bid> {
  const { calculateFast: fast } = await import("../evaluate/calculate-fast.js");
  return bidOf(job, fast(job.model, job.given));
}

async function bidOf(job: LoadedJob, values: readonly Value[]): Promise<Bid> {
  const [{ failedChecks }, { missingInputs }, { rootErrors }, { identityOf }] = await Promise.all([
    import("../job/failed-checks.js"),
    import("../job/missing.js"),
    import("../job/errors-in-cells.js"),
    import("../book/identity-of.js"),
  ]);
  const { model, book } = job;
  const failed = failedChecks(model, values).map(({ cell, level, message }) => ({
    name: cell.id,
    level,
    message,
  }));
  const missing = missingInputs(model, values).map(({ id }) => id);
  const inError = rootErrors(model, values).map(({ cell }) => cell.id);
  const holds = failed.every(({ level }) => level !== "must");
  return {
    model,
    values,
    trail: job.job.trail ?? [],
    book: `${book.name}, as of ${book.asOf}`,
    identity: identityOf(job),
    stands: holds && missing.length === 0 && inError.length === 0,
    failed,
    missing,
    inError,
  };
}

/**
 * The value of a cell by its name, in the unit of the job's system: `price`, `runs.posts[2]`. Dates are
 * days since 1899-12-30, as in the workbook; a blank input is null; an error is a CellError.
 * Throws RillbookError for a name that is none.
 *
 * @example
 * import * as rillbook from "rillbook";
 *
 * const { length, money } = rillbook.quantities;
 * const fence = rillbook.template({
 *   name: "fence",
 *   version: 1,
 *   title: "A fence with invented prices",
 *   sheets: [
 *     rillbook.sheet("Fence", "What the fence costs.", [
 *       rillbook.lines("Fence", {
 *         fence_length: rillbook.input(length, "Length", { least: 0 }),
 *         price: rillbook.calc(money, "fence_length/1[ft]*42[$]", "Price"),
 *       }),
 *     ]),
 *   ],
 * });
 * const record = await rillbook.newJob(await rillbook.compile(fence, "us"), "F-1");
 * const job = await rillbook.openJob({ ...record, inputs: { fence_length: 100 } }, [fence]);
 * const bid = await rillbook.calculate(job);
 * console.assert(rillbook.valueAt(bid, "price") === 4200);
 * const bytes = await rillbook.writeWorkbook(bid);
 * console.assert((await rillbook.auditWorkbook(bytes, [fence])).clean);
 */
export function valueAt({ model, values }: Pick<Bid, "model" | "values">, name: string): Value {
  const cell = model.byId.get(name);
  if (cell !== undefined) return values[cell.index] ?? null;
  throw new RillbookError(
    "name-unknown",
    `The name "${name}" is no cell of template ${model.template.name}.${suggestion(name, [...model.byId.keys()])}`,
  );
}
