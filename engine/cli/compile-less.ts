import { setFlagsFromString } from "node:v8";

/** Commands that go through many jobs or draws, and so through the same code for long. */
const long: readonly string[] = ["rerun", "weigh", "learn"];

/** What has V8 optimize code many times as late as by itself, by its release; of Node 24 it changes nothing. */
const flags: Readonly<Record<string, string>> = {
  "11.3": "--interrupt-budget=800000", // Node 20
  "12.4": "--invocation-count-for-turbofan=24000", // Node 22
};

/** The flag of a release of V8; none where V8 would complain that it knows none. */
export const flagOf = (v8: string): string | undefined => flags[v8.split(".", 2).join(".")];

/**
 * Has V8 optimize code later: a command on one job is over before optimized code pays, and more than a third of its
 * processor time went to V8's compiler, in threads beside those that work.
 */
export function compileLess([command = ""]: readonly string[]): void {
  const flag = flagOf(process.versions.v8);
  if (flag !== undefined && !long.includes(command)) setFlagsFromString(flag);
}
