import { setFlagsFromString } from "node:v8";

/** What has V8 optimize code many times as late as by itself, by its release; of Node 24 it changes nothing. */
const flags: Readonly<Record<string, string>> = {
  "11.3": "--interrupt-budget=800000", // Node 20
  "12.4": "--invocation-count-for-turbofan=24000", // Node 22
};

/** The flag of a release of V8; none where V8 would complain that it knows none. */
export const flagOf = (v8: string): string | undefined => flags[v8.split(".", 2).join(".")];

/**
 * Has V8 optimize code later: more than a third of a command's processor time went to V8's compiler, in threads beside those
 * that work. That holds for a thousand jobs and ten thousand draws as well: a template's formulas are thousands of functions,
 * none of which is run often enough to earn back that it was compiled a second time.
 */
export function compileLess(): void {
  const flag = flagOf(process.versions.v8);
  if (flag !== undefined) setFlagsFromString(flag);
}
