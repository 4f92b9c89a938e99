import { setFlagsFromString } from "node:v8";

/** Heap with which a thread begins, MB: below it V8 looks for no garbage among what lives on, such as models. */
const begun = 120;

/** Releases of V8 that are known to know the flag: Node 20 and 22. */
const known: readonly string[] = ["11.3", "12.4"];

/** The flag of a release of V8; none where V8 would complain that it knows none. */
export const heapFlagOf = (v8: string): string | undefined =>
  known.includes(v8.split(".", 2).join(".")) ? `--initial-heap-size=${begun}` : undefined;

/**
 * Has the threads that are begun from now on start with a heap of the size that they come to anyhow: on the way there V8 looked
 * through all of it a dozen times, which was a tenth of the processor time of a run.
 */
export function beginLarger(): void {
  const flag = heapFlagOf(process.versions.v8);
  if (flag !== undefined) setFlagsFromString(flag);
}
