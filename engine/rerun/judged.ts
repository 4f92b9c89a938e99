import type { Claim } from "../evaluate/judge-parts.js";

/** A job that the judge is asked about: what was looked at, and all that this hangs on. */
export interface Judged extends Claim {
  readonly file: string;
}

/** What is told where the judge comes to something else; undefined where it bears all of the jobs out. */
export async function judgedFault(jobs: readonly Judged[]): Promise<string | undefined> {
  if (jobs.length === 0) return undefined;
  // hyperformula takes time to load and memory: a thread without jobs for it goes without
  const [{ questionsOfAll }, { judgedValues }] = await Promise.all([
    import("../evaluate/judge-parts.js"),
    import("../evaluate/judge-sheets.js"),
  ]);
  const differenceIn = (some: readonly Judged[]) => {
    const questions = questionsOfAll(some);
    return questions.difference(judgedValues(questions.task()));
  };
  const found = differenceIn(jobs);
  if (found === undefined) return undefined;
  // asked alone, a job shows whether it is the one
  const one = jobs.length === 1 ? jobs[0] : jobs.find((job) => differenceIn([job]) !== undefined);
  const { cell, values } = found;
  const files = one?.file ?? jobs.map(({ file }) => file).join(", ");
  return `The two evaluators differ for ${files} in ${cell.id} on sheet ${cell.sheet}: ${values.map(String).join(" and ")}. The run is stopped: no result of it can be relied on. Please report this with the job.`;
}
