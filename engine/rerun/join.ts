import { RillbookError } from "../errors.js";
import { outputTo } from "../output/write.js";
import { Results } from "./results.js";
import { mustAgree } from "./resume.js";
import { type Totals, totalsOf } from "./running-totals.js";

/**
 * Joins the result files of all parts of a run into one summary (none is written without `output`).
 * Throws RillbookError where a part is missing, comes twice, is unfinished or of another run.
 */
export async function join(
  paths: readonly string[],
  output: string | undefined,
): Promise<{ results: Results; totals: Totals }> {
  const plan = { kind: "summary", inputs: paths } as const;
  const summary = output === undefined ? undefined : await outputTo(output, plan);
  const seen = new Map<number, string>();
  let results: Results | undefined;
  for (const path of paths) {
    const one = await Results.of([path]);
    const [run] = one.runs;
    if (run?.part === undefined) {
      throw refused(path, "is not one part of a run (made with --part)", "Name parts only.");
    }
    const { part } = run.part;
    const other = seen.get(part);
    if (other !== undefined) {
      throw refused(path, `is part ${part}, as ${other} is`, "Name each part once.");
    }
    if (one.ends.length === 0) {
      throw refused(path, `(part ${part}) is unfinished`, "Go on from it with --resume.");
    }
    seen.set(part, path);
    const first = results?.runs[0];
    if (first === undefined) results = one;
    else mustAgree(run, first, path);
  }
  const of = results?.runs[0]?.part?.of ?? 0;
  const missing = Array.from({ length: of }, (_, i) => i + 1).filter((part) => !seen.has(part));
  if (missing.length > 0) {
    throw refused(
      `${paths.length} of ${of} parts`,
      `are here; missing: ${missing.join(", ")}`,
      "Name all of them.",
    );
  }
  const all = await Results.of(paths);
  const totals = await totalsOf(all);
  if (summary !== undefined) {
    const { writeSummary } = await import("./summary/write-summary.js");
    await writeSummary(summary, all, totals);
  }
  return { results: all, totals };
}

const refused = (thing: string, what: string, todo: string) =>
  new RillbookError("parts-incomplete", `${thing} ${what}. ${todo}`);
