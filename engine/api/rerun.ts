import type { Listener, Outcome } from "../rerun/rerun.js";
import type { Template } from "../template/template.js";
import { withKeptModels } from "./models.js";

/** What is calculated again, and under which prices. */
export interface RerunRequest {
  /** Files, folders and patterns of job records and workbooks. */
  readonly jobs: readonly string[];
  /** Path of the new office book. */
  readonly office: string;
  /** The summary workbook to write; the result lines stand beside it. Without it only the outcome is given. */
  readonly output?: string;
  /** Quotes are held against this day, like `2027-01-15`; today, without it. */
  readonly asOf?: string;
  /** Each job by the version of its template that it names, or by the newest; `own`, without it. */
  readonly versions?: "own" | "newest";
}

/**
 * Calculates old jobs again under a new office book, one after another. Nothing in the old files is changed;
 * what is wrong with one job is its result and stops no other.
 *
 * @param listener gets each result as it comes (`line`)
 */
export async function rerun(
  templates: readonly Template[],
  request: RerunRequest,
  listener: Pick<Listener, "line" | "signal"> = {},
): Promise<Outcome> {
  await withKeptModels();
  const [{ rerun: run }, { tradeOf }, { today }] = await Promise.all([
    import("../rerun/rerun.js"),
    import("../rerun/trade.js"),
    import("../job/date.js"),
  ]);
  const { jobs, office, output, asOf = today(), versions = "own" } = request;
  const usual = { filters: [], sample: 0, resume: false, moved: false, workers: 1 };
  const kept = output === undefined ? {} : { output };
  const options = { ...usual, ...kept, named: jobs, office, asOf, versions };
  return run(tradeOf(templates), undefined, options, listener);
}
