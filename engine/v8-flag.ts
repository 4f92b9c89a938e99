import { setFlagsFromString } from "node:v8";

/** A flag for each release of V8 that is known to know it, by the release's first two numbers. */
export type FlagByRelease = Readonly<Record<string, string>>;

/** The flag for a release of V8, such as `11.3.244.8-node.33`; none where V8 would complain that it knows none. */
export const flagFor = (v8: string, flags: FlagByRelease): string | undefined =>
  flags[v8.split(".", 2).join(".")];

/** Gives the V8 at hand its flag, where there is one for it. */
export function giveFlag(flags: FlagByRelease): void {
  const flag = flagFor(process.versions.v8, flags);
  if (flag !== undefined) setFlagsFromString(flag);
}
