import { Option } from "commander";
import { RillbookError } from "../errors.js";
import {
  nobodyNamed,
  type OriginName,
  oneLine,
  origins,
  type TrailEntry,
} from "../job/trail/entry.js";
import type { InputValue } from "../template/declare.js";

/** Origins that a person can state; the others are found out by the program. */
export const statedOrigins: readonly OriginName[] = origins.filter(
  (one) => one !== "changed in the workbook" && one !== "office book",
);

export const fromOption = (): Option =>
  new Option("--from <origin>", "where the values come from (always needed)").choices(
    statedOrigins,
  );

/**
 * Tells all at once which of the options for the trail are missing.
 * Throws RillbookError, with what each is for.
 */
export function mustHaveOptions(given: Readonly<Record<string, unknown>>): void {
  const missing = Object.keys(wanted).filter(
    (name) => name in given && given[name] === undefined,
  ) as (keyof typeof wanted)[];
  if (missing.length === 0) return;
  const names = missing.map((name) => `--${name}`).join(" and ");
  throw new RillbookError(
    "options-missing",
    `${names} ${missing.length === 1 ? "is" : "are"} missing: the trail must say ${missing.map((name) => wanted[name]).join("; and ")}. Add ${missing.length === 1 ? "it" : "them"}.`,
  );
}

const wanted = {
  by: 'who says so, as in --by "Site crew"',
  from: `where the values come from, as in --from "${statedOrigins[0]}" (or: ${statedOrigins.slice(1).join(", ")})`,
};

/** A name or note as the trail keeps it: one line, no blanks around it. Throws RillbookError for an empty name. */
export function whoAndWhy(options: { by?: string; note?: string }): { by: string; note?: string } {
  const by = oneLine(options.by ?? "");
  const note = oneLine(options.note ?? "");
  if (by === "") {
    throw new RillbookError(
      "by-missing",
      "--by is empty, but the trail must say who. Give a name.",
    );
  }
  return { by, ...(note === "" ? {} : { note }) };
}

/** Who takes a workbook in and why; without a name the workbook says who filled it in. */
export function takerOf(options: { by?: string; note?: string }): { by?: string; note?: string } {
  if (options.by !== undefined) return whoAndWhy(options);
  const note = oneLine(options.note ?? "");
  return note === "" ? {} : { note };
}

/** `lift: 8 ft, was 7.5 ft (measured on site, by A)`. */
export function entryLine({ input, old, new: now, unit, from, by, note }: TrailEntry): string {
  const shown = (value: InputValue | null) => (value === null ? "blank" : withUnit(value, unit));
  const was = old === now ? "as before" : `was ${shown(old)}`;
  return `${input}: ${shown(now)}, ${was} (${from}, by ${by}${note === undefined ? "" : `: ${note}`})\n`;
}

/** What is to be said of entries by nobody named; none where all have a name. */
export function unnamedLine(entries: readonly TrailEntry[]): string {
  const count = entries.filter(({ by }) => by === nobodyNamed).length;
  if (count === 0) return "";
  const changes = count === 1 ? "this change" : `these ${count} changes`;
  return `Nobody is named for ${changes}: say who with --by, and why with --note (the same command again adds the name). Until then the audit doubts ${count === 1 ? "it" : "them"}.\n`;
}

/** `8 ft`, `$350`, `$3.20/ft`: as people write it. */
function withUnit(value: InputValue, unit: string): string {
  if (typeof value !== "number" || unit === "") return String(value);
  if (!unit.startsWith("$")) return `${value} ${unit}`;
  return `${value < 0 ? "-" : ""}$${Math.abs(value)}${unit.slice(1)}`;
}
