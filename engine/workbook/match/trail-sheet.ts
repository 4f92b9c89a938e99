import { createRequire } from "node:module";
import type { ValidateFunction } from "ajv";
import type { TrailEntry } from "../../job/trail/entry.js";
import { entrySchema } from "../../job/trail/schema.js";
import type { InputValue } from "../../template/declare.js";
import { columnLetters, positionOf } from "../read/address.js";
import type { CellContent, SheetContent, WorkbookContent } from "../read/content.js";
import { trailColumns, trailSheet, writtenSheet } from "./trail-columns.js";

/** What the Trail sheet of a workbook says. */
export interface WorkbookTrail {
  /** Inputs and office-book figures as the workbook was written, by id; blank ones may be absent. */
  readonly written: ReadonlyMap<string, InputValue | null>;
  /** The rest of each line of those lists: unit, origin, by, when, note, meaning. */
  readonly said: ReadonlyMap<string, WrittenLine>;
  readonly entries: readonly TrailEntry[];
  /** What on the sheet cannot be read, as sentences. */
  readonly faults: readonly string[];
}

/** A line of the lists of values as written, and where it stands. */
export interface WrittenLine {
  readonly address: string;
  readonly cells: readonly CellContent["value"][];
}

let entryCheck: ValidateFunction<TrailEntry> | undefined;

/** Made for the first workbook that is read: most commands read none. */
function checkOfEntries(): ValidateFunction<TrailEntry> {
  const { Ajv } = createRequire(import.meta.url)("ajv") as typeof import("ajv");
  entryCheck ??= new Ajv({ allowUnionTypes: true, strict: false }).compile<TrailEntry>(entrySchema);
  return entryCheck;
}

/** Reads the Trail sheet; undefined where the workbook has none. Hashes are not looked at. */
export function readTrailSheet(content: WorkbookContent): WorkbookTrail | undefined {
  const sheet = content.sheets.find(
    ({ name, read }) => read && name.toLowerCase() === trailSheet.toLowerCase(),
  );
  if (sheet === undefined) return undefined;
  const written = new Map<string, InputValue | null>();
  const said = new Map<string, WrittenLine>();
  const entries: TrailEntry[] = [];
  const faults: string[] = [];
  let part: Part | undefined;
  for (const line of linesOf(sheet)) {
    const cells = trailColumns.entries.map((_, i) => valueIn(sheet, line, i + 1));
    const heading = headingOf(cells);
    if (heading !== undefined) part = heading;
    else if (part !== undefined && cells[1] !== null && cells[1] !== undefined) {
      const fault = part === "values" ? takeValue(cells, written) : takeEntry(cells, line, entries);
      if (part === "values") {
        const own = trailColumns.values.map((_, i) => cells[i] ?? null);
        said.set(String(cells[1]), { address: `A${line}`, cells: own });
      }
      if (fault !== undefined) faults.push(`Sheet ${sheet.name}, line ${line}: ${fault}`);
    }
  }
  if (part === undefined) faults.push(`Sheet ${sheet.name} has lost its headings.`);
  readAsWritten(content, written, faults);
  return { written, said, entries, faults };
}

type Value = CellContent["value"];
/** The lists of the sheet. */
type Part = "values" | "entries";

/** The values that the other sheet does not tell. Older workbooks tell all of them there. */
function readAsWritten(
  content: WorkbookContent,
  written: Map<string, InputValue | null>,
  faults: string[],
): void {
  const sheet = content.sheets.find(
    ({ name, read }) => read && name.toLowerCase() === writtenSheet.toLowerCase(),
  );
  if (sheet === undefined) return;
  let begun = false;
  for (const line of linesOf(sheet)) {
    const cells = trailColumns.written.map((_, i) => valueIn(sheet, line, i + 1));
    if (cells[1] === trailColumns.written[1]) begun = true;
    else if (begun && cells[1] !== null) {
      const fault = takeValue(cells, written);
      if (fault !== undefined) faults.push(`Sheet ${sheet.name}, line ${line}: ${fault}`);
    }
  }
}

function takeValue(
  cells: readonly Value[],
  written: Map<string, InputValue | null>,
): string | undefined {
  const [, name, value = null] = cells;
  if (typeof name !== "string") return "the name of an input is no text.";
  if (written.has(name)) return `${name} is listed twice.`;
  if (typeof value === "object" && value !== null) return `the value of ${name} is an error.`;
  written.set(name, value);
  return undefined;
}

function takeEntry(
  cells: readonly Value[],
  line: number,
  entries: TrailEntry[],
): string | undefined {
  const [number, input, now = null, unit, from, by, time, note, old = null, hash] = cells;
  const entry: unknown = {
    ...{ number, time, by, input, old, new: now, unit: unit ?? "", from },
    ...(note === null ? {} : { note }),
    hash,
  };
  const isEntry = checkOfEntries();
  if (!isEntry(entry)) {
    const [error] = isEntry.errors ?? [];
    return `entry ${JSON.stringify(number ?? line)} cannot be read: ${error?.instancePath.slice(1) ?? ""} ${error?.message ?? ""}.`;
  }
  entries.push(entry);
  return undefined;
}

function headingOf(cells: readonly Value[]): Part | undefined {
  if (cells[1] !== trailColumns.values[1]) return undefined;
  if (cells[2] === trailColumns.values[2]) return "values";
  return cells[2] === trailColumns.entries[2] ? "entries" : undefined;
}

/** The lines that hold something, from the top down. */
function linesOf({ cells }: SheetContent): number[] {
  const lines = new Set<number>();
  for (const address of cells.keys()) lines.add(positionOf(address)?.row ?? 0);
  return [...lines].sort((a, b) => a - b);
}

const valueIn = ({ cells }: SheetContent, line: number, column: number): Value =>
  cells.get(`${columnLetters(column)}${line}`)?.value ?? null;
