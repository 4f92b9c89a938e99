import { constants } from "node:fs";
import { access, stat } from "node:fs/promises";
import { basename, dirname, join } from "node:path";
import { RillbookError } from "../errors.js";
import { identityOfWorkbook } from "../workbook/match/identity.js";
import type { WorkbookContent } from "../workbook/read/content.js";
import { kindOfFile, type OutputKind, outputKinds, type RecognizedFile } from "./kind.js";
import { unwritable } from "./system-error.js";
import { isSameFile, type Target, targetOf } from "./target.js";

/** What writing over a workbook would lose. */
export interface Edits {
  /** Inputs changed in it that stand neither in what is written nor in its trail, by id. */
  readonly inputs: readonly string[];
  /** Formulas, published figures and prices changed in it, which no command takes in. */
  readonly besides: readonly string[];
  /** Why it cannot be told what was changed, where that is so. */
  readonly untold?: string;
  /** It carries a seal. */
  readonly sealed?: boolean;
}

/** What is going to be written, and what it must not be written over. */
export type Plan = Inputs & (BidPlan | { readonly kind: Exclude<OutputKind, "bid"> });

interface Inputs {
  /** Paths of all that the command reads. */
  readonly inputs: readonly string[];
}

interface BidPlan {
  readonly kind: "bid";
  /** Tells what was changed in a bid that stands there. */
  readonly edits: (content: WorkbookContent) => Edits;
  /** The template that is written, or those of its kind: no workbook of another one is written over. */
  readonly templates: readonly string[];
}

/**
 * Looks whether a file may be written, and where it is in the end. Throws RillbookError for one that is read by the
 * same command, that is no regular file, is open in a spreadsheet, is of another kind than what
 * would be written, or holds changes that stand nowhere else.
 */
export async function judged(asked: string, plan: Plan): Promise<Target> {
  const target = await targetOf(asked);
  await mustBeFile(target);
  for (const input of plan.inputs) {
    if (await isSameFile(target, input)) throw isInput(asked, input, plan.kind);
  }
  mustEndRight(asked, plan.kind);
  if (target.state === undefined) return target;
  await mustBeFree(target);
  const found = await kindOfFile(target.path).catch((error) => {
    throw unwritable(asked, error);
  });
  if (found !== undefined) mustBeReplaceable(target, found, plan);
  return target;
}

/** Throws RillbookError for a folder, a device, a pipe or a socket. */
export async function mustBeFile({ asked, path, state }: Target): Promise<void> {
  if (state?.isDirectory()) {
    throw new RillbookError(
      "output-is-folder",
      `${asked} is a folder, not a file. Name a file in it.`,
    );
  }
  if (state !== undefined && !state.isFile()) {
    const what = state.isFIFO() ? "a pipe" : state.isSocket() ? "a socket" : "a device";
    throw new RillbookError(
      "output-not-file",
      `${asked} is ${what}, not a file, and would be lost if a file took its place. Name a file.`,
    );
  }
  const lock = await openElsewhere(path);
  if (lock !== undefined) {
    throw new RillbookError(
      "output-open",
      `${asked} is open in a spreadsheet (${lock} stands beside it). Close it there, or write to another file.`,
    );
  }
}

/** Spreadsheet programs leave a file beside the one they have open: `.~lock.NAME#` or `~$NAME`. */
async function openElsewhere(path: string): Promise<string | undefined> {
  const name = basename(path);
  for (const lock of [`.~lock.${name}#`, `~$${name}`, `~$${name.slice(2)}`]) {
    const found = await stat(join(dirname(path), lock)).catch(() => undefined);
    if (found !== undefined) return lock;
  }
  return undefined;
}

/** Throws RillbookError for a file that may only be read, also where the superuser asks. */
export async function mustBeFree({ asked, path, state }: Target): Promise<void> {
  if (state !== undefined && (state.mode & 0o222n) === 0n) {
    throw new RillbookError(
      "output-not-writable",
      `${asked} is marked as only to be read, and is left as it is. Write to another file.`,
    );
  }
  await access(path, constants.W_OK).catch((error: unknown) => {
    throw unwritable(asked, error);
  });
}

export function isInput(asked: string, input: string, kind: OutputKind): RillbookError {
  const same = asked === input ? "" : ` (${input} is the same file)`;
  return new RillbookError(
    "output-is-input",
    `${asked} is read by this very command${same}, and ${outputKinds[kind].means} would take its place. Name another file to write.`,
  );
}

/** Throws RillbookError for a name that does not end as the kind of file does. */
export function mustEndRight(asked: string, kind: OutputKind): void {
  const { means, endings } = outputKinds[kind];
  if (endings.some((ending) => asked.toLowerCase().endsWith(ending))) return;
  throw new RillbookError(
    "output-kind",
    `${asked} would be ${means}, whose name must end in ${endings.join(" or ")}. Name it so.`,
  );
}

function mustBeReplaceable({ asked }: Target, found: RecognizedFile, plan: Plan): void {
  if (found.kind !== plan.kind) {
    throw new RillbookError(
      "output-kind",
      `${asked} is ${found.means}, and ${outputKinds[plan.kind].means} would take its place. Name another file.`,
    );
  }
  if (found.content === undefined) return;
  if (plan.kind === "bid") {
    const { template = "none" } = identityOfWorkbook(found.content);
    if (!plan.templates.includes(template)) {
      throw new RillbookError(
        "output-kind",
        `${asked} is a workbook of template ${template}, and one of ${plan.templates[0]} would take its place. Name another file.`,
      );
    }
    mustBeUnedited(asked, plan.edits(found.content));
    return;
  }
  const { created, modified } = found.content.properties;
  if (created === modified) return;
  throw new RillbookError(
    "output-edited",
    `${asked} was saved by another program since rillbook wrote it (${modified ?? "no time given"}), and what was changed stands nowhere else. Name another file.`,
  );
}

function mustBeUnedited(asked: string, { inputs, besides, untold, sealed }: Edits): void {
  const refused = (sentence: string) =>
    new RillbookError("output-edited", `${asked} ${sentence} or name another file.`);
  if (sealed) throw refused("is sealed, and the seal stands nowhere else. Keep it elsewhere,");
  if (untold !== undefined) {
    throw refused(`may hold changes, which cannot be told: ${ended(untold)} Keep it elsewhere,`);
  }
  if (inputs.length > 0) {
    throw refused(
      `holds inputs that were changed in it and stand nowhere else: ${listed(inputs)}. Take them in first (rillbook take ${asked} -o <job record> --by <who>),`,
    );
  }
  if (besides.length > 0) {
    throw refused(
      `was changed in more than its inputs: ${listed(besides)}. That is never taken in: keep a copy of it (rillbook audit ${asked} tells all),`,
    );
  }
}

const ended = (sentence: string): string => (/[.!?]$/.test(sentence) ? sentence : `${sentence}.`);

/** A few names are told, many are counted. */
const mostNames = 5;

function listed(names: readonly string[]): string {
  const more = names.length - mostNames;
  return `${names.slice(0, mostNames).join(", ")}${more > 0 ? ` and ${more} more` : ""}`;
}
