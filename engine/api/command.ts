import type { Template } from "../template/template.js";
import { withKeptModels } from "./models.js";

/** Where the command line speaks. */
export interface Voices {
  readonly out: (text: string) => void;
  readonly err: (text: string) => void;
}

/**
 * Runs a command line of rillbook on templates of one's own, as a program of one's own would: gives the exit status
 * (0 done, 1 the bid does not stand or something was found, 2 bad input or usage, 3 a fault of the program).
 *
 * @param args without `node` and the program's name: `["bid", "job.json", "-o", "bid.xlsx"]`
 * @param voices where it speaks; standard output and standard error, without it
 */
export async function runCommand(
  args: readonly string[],
  templates: readonly Template[],
  voices: Voices = {
    out: (text) => process.stdout.write(text),
    err: (text) => process.stderr.write(text),
  },
): Promise<number> {
  await withKeptModels();
  const { run } = await import("../cli/run.js");
  return run(args, templates, voices);
}
