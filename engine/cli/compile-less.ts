import { type FlagByRelease, flagFor, giveFlag } from "../v8-flag.js";

/** What has V8 optimize code many times as late as by itself, by its release; of Node 24 it changes nothing. */
const flags: FlagByRelease = {
  "11.3": "--interrupt-budget=800000", // Node 20
  "12.4": "--invocation-count-for-turbofan=24000", // Node 22
};

/** The flag of a release of V8; none where V8 would complain that it knows none. */
export const flagOf = (v8: string): string | undefined => flagFor(v8, flags);

/**
 * Has V8 optimize code later: more than a third of a command's processor time went to V8's compiler, in threads beside those
 * that work. That holds for a thousand jobs and ten thousand draws as well: a template's formulas are thousands of functions,
 * none of which is run often enough to earn back that it was compiled a second time.
 */
export function compileLess(): void {
  giveFlag(flags);
}
