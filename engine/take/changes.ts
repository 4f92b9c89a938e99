import { type Change, nobodyNamed, oneLine, type TrailEntry } from "../job/trail/entry.js";
import { unitFor } from "../job/trail/inputs.js";
import { longestNote } from "../job/trail/schema.js";
import type { InputDeclaration, InputValue } from "../template/declare.js";
import type { Cell, Model } from "../template/model.js";
import type { WorkbookContent } from "../workbook/read/content.js";
import { program, undated } from "../workbook/write/document.js";
import type { CellInputs } from "./cells.js";

/** Who takes a workbook in, when, and why. Without `by` a name counts that was filled in with the changes. */
export interface Taker extends Pick<Change, "time" | "note"> {
  readonly by?: string;
}

/** Who gave the values of a workbook, as its own cells say. */
interface Givers {
  readonly walked?: string;
  readonly on?: string;
  readonly chosen?: string;
  /** Who told what the work took, and when. */
  readonly built?: string;
  readonly builtOn?: string;
}

/**
 * An entry of the trail for each input that is no longer what it was when the workbook was written. What
 * was asked on the walk is by whom the workbook says that walked, what the work took by whom it says that told it; all
 * else by the taker, or by whom the workbook names as the one who chose. A name that stood in the workbook when it was
 * written tells who gave what stood there then, and not who changed it: without a taker such a change is by nobody
 * named. Only what was blank then is still filled in by who walked, or told what the work took.
 */
export function changesOf(
  model: Model,
  content: WorkbookContent,
  { values, formulas }: CellInputs,
  before: ReadonlyMap<string, InputValue | null>,
  taker: Taker,
): Change[] {
  const givers = giversOf(model, values);
  const since = giversOf(model, namedSince(model, values, before));
  const after = new Set(model.sheets.flatMap((one) => (one.afterwards ? [one.name] : [])));
  return model.cells.flatMap((cell) => {
    const [old = null, now = null] = [before.get(cell.id), values.get(cell.id)];
    if (cell.declaration.kind !== "input" || old === now) return [];
    const formula = formulas.get(cell.id);
    const known = taker.by !== undefined || old === null ? givers : since;
    const told = toldBy(cell, known, after.has(cell.sheet));
    return [changeOf(cell, old, now, { taker, since, told, content, formula })];
  });
}

/**
 * Entries that name afterwards who made the changes which were taken in by nobody named: of each input whose last entry
 * in the trail is such a one. None without a name.
 */
export function namings(
  model: Model,
  trail: readonly TrailEntry[],
  { by, time, note }: Taker,
): Change[] {
  if (by === undefined) return [];
  const last = new Map(trail.map((entry) => [entry.input, entry]));
  return [...last.values()].flatMap((entry): Change[] => {
    const cell = model.byId.get(entry.input);
    if (entry.by !== nobodyNamed || cell === undefined) return [];
    const { input, new: now, from } = entry;
    const said = [note, `names who made the change of entry ${entry.number}`].filter(Boolean);
    const unit = unitFor(cell);
    return [{ time, by, input, old: now, new: now, unit, from, note: cut(said.join("; ")) }];
  });
}

function giversOf(model: Model, values: CellInputs["values"]): Givers {
  const { givers } = model.template.roles ?? {};
  const { walkedBy = "", walkedOn = "", chosenBy = "", builtBy = "", builtOn = "" } = givers ?? {};
  const said = (name: string) => {
    const value = values.get(name) ?? null;
    const line = value === null ? "" : oneLine(String(value)).slice(0, 100);
    return line === "" ? undefined : line;
  };
  const [walked, on, chosen] = [said(walkedBy), said(walkedOn), said(chosenBy)];
  const [built, builtDay] = [said(builtBy), said(builtOn)];
  return {
    ...(walked === undefined ? {} : { walked }),
    ...(on === undefined ? {} : { on }),
    ...(chosen === undefined ? {} : { chosen }),
    ...(built === undefined ? {} : { built }),
    ...(builtDay === undefined ? {} : { builtOn: builtDay }),
  };
}

/** The names that were filled in since the workbook was written; a day goes with its name. */
function namedSince(
  model: Model,
  values: CellInputs["values"],
  before: ReadonlyMap<string, InputValue | null>,
): CellInputs["values"] {
  const { givers } = model.template.roles ?? {};
  const { walkedBy = "", walkedOn = "", chosenBy = "", builtBy = "", builtOn = "" } = givers ?? {};
  const isNew = (name: string) => (values.get(name) ?? null) !== (before.get(name) ?? null);
  const kept = [
    ...(isNew(walkedBy) ? [walkedBy, walkedOn] : []),
    ...(isNew(chosenBy) ? [chosenBy] : []),
    ...(isNew(builtBy) ? [builtBy, builtOn] : []),
  ];
  return new Map(kept.map((name) => [name, values.get(name) ?? null]));
}

/** Who gave a value on the site or after the work, as the workbook says, and when. */
interface Told {
  readonly by: string;
  readonly when: string;
  readonly from: Change["from"];
}

function toldBy(cell: Cell, givers: Givers, isAfter: boolean): Told | undefined {
  const { walked, on, built, builtOn } = givers;
  const day = (said: string | undefined) => (said === undefined ? "" : ` on ${said}`);
  if (isAfter && built !== undefined) {
    return { by: built, when: `told${day(builtOn)}`, from: "told after the work" };
  }
  const onWalk = (cell.declaration as InputDeclaration).asked === "walk" && walked !== undefined;
  return onWalk ? { by: walked, when: `walked${day(on)}`, from: "measured on site" } : undefined;
}

interface Circumstances {
  readonly taker: Taker;
  /** Who was named since the workbook was written. */
  readonly since: Givers;
  readonly told: Told | undefined;
  readonly content: WorkbookContent;
  readonly formula: string | undefined;
}

function changeOf(
  cell: Cell,
  old: Change["old"],
  now: Change["new"],
  { taker, since, told, content, formula }: Circumstances,
): Change {
  const by = told?.by ?? taker.by ?? since.chosen ?? since.walked ?? nobodyNamed;
  const known = told !== undefined && taker.by !== undefined;
  const takenBy = known ? `taken in by ${taker.by}` : undefined;
  const note = noteOf([taker.note, told?.when, takenBy], content, formula);
  const from = told?.from ?? "changed in the workbook";
  return { time: taker.time, by, input: cell.id, old, new: now, unit: unitFor(cell), from, note };
}

/** Who last saved the file and when, as it says; what stands as written here tells of no save. */
function lastSaveSaid({
  lastModifiedBy,
  modified,
}: WorkbookContent["properties"]): string | undefined {
  const editor = lastModifiedBy?.trim() ?? "";
  const by = editor === "" || editor === program ? [] : [`by "${editor}"`];
  const asWritten = modified === undefined || Date.parse(modified) === undated.getTime();
  const said = [...by, ...(asWritten ? [] : [modified])];
  return said.length === 0 ? undefined : `the file says it was last saved ${said.join(", ")}`;
}

/** The taker's note, the formula behind the value, and what the file says of its last save. */
function noteOf(
  notes: readonly (string | undefined)[],
  { properties }: WorkbookContent,
  formula?: string,
): string {
  const parts = [
    ...notes,
    formula === undefined ? undefined : `typed as =${formula}`,
    lastSaveSaid(properties),
  ];
  const line =
    oneLine(parts.filter(Boolean).join("; ")) || "the workbook does not say who saved it, nor when";
  return cut(line);
}

const cut = (line: string): string =>
  line.length <= longestNote ? line : `${line.slice(0, longestNote - 1)}…`;
