import { fillBook } from "../book/fill.js";
import type { OfficeBook } from "../book/office-book.js";
import { RillbookError } from "../errors.js";
import { Cone } from "../evaluate/cone.js";
import type { Value } from "../formula/value.js";
import {
  Books,
  isOfficeBook,
  isWorkbook,
  type OldJob,
  oldRecord,
  oldWorkbook,
  readContent,
  type Trade,
} from "../rerun/index.js";
import type { Model } from "../template/model.js";
import { KeptParts } from "../workbook/read/kept-parts.js";
import { type BuiltJob, builtJob, cellsOf, type Decided, type Looked } from "./built-job.js";

/** A built job with the file it was read from. */
export interface Found extends BuiltJob {
  readonly file: string;
  readonly model: Model;
}

/** A file that gave no evidence, and why. */
export interface PassedOver {
  readonly file: string;
  readonly because: string;
}

export interface Collected {
  /** In the order in which their work ended. */
  readonly jobs: readonly Found[];
  /** Bids won and lost, each once, in the order in which they were decided; those without a day first. */
  readonly decided: readonly Decided[];
  /** Job numbers of which several files tell another outcome or another price: not among those decided. */
  readonly unlike: readonly string[];
  readonly passedOver: readonly PassedOver[];
}

/**
 * Reads jobs, and takes those that are built and say what they took. Nothing in the files is changed; what
 * is wrong with one of them is told and stops no other. A record is calculated under the office book that it
 * names, or under `book` where it names none; a workbook under the rows that it carries.
 */
export async function collect(
  files: readonly string[],
  trade: Trade,
  book: OfficeBook,
  condition: string,
): Promise<Collected> {
  const books = new Books(trade.readBook);
  const cones = new Map<Model, Cone>();
  const kept = new KeptParts();
  const found: Found[] = [];
  const passedOver: PassedOver[] = [];
  const decided = new Map<string, readonly Decided[]>();
  for (const file of files) {
    const looked = await lookedAt(file);
    if (looked.decided !== undefined) {
      const { job } = looked.decided;
      decided.set(job, [...(decided.get(job) ?? []), looked.decided]);
    }
    if ("built" in looked) found.push(looked.built);
    else passedOver.push({ file, because: looked.because });
  }
  const { jobs, twice } = onceEach(found);
  const inOrder = [...jobs].sort(
    (a, b) => a.ended.localeCompare(b.ended) || a.job.localeCompare(b.job),
  );
  const { bids, unlike } = decidedOnce([...decided.values()]);
  return { jobs: inOrder, decided: bids, unlike, passedOver: [...passedOver, ...twice] };

  async function lookedAt(file: string): Promise<FoundIn> {
    try {
      const { bytes } = await readContent(file);
      const old = read(file, bytes, trade, kept);
      if (typeof old === "string") return { because: old };
      const { model } = old;
      if (model.template.roles?.built === undefined) {
        return { because: "its template does not ask what a job took" };
      }
      const given = await givenBy(old, books, book);
      const cone = cones.get(model) ?? new Cone(model, cellsOf(model));
      cones.set(model, cone);
      const looked: Looked = builtJob(model, old.job, given, cone, condition);
      return "built" in looked ? { ...looked, built: { ...looked.built, file, model } } : looked;
    } catch (error) {
      if (!(error instanceof RillbookError)) throw error;
      return { because: error.message };
    }
  }
}

type FoundIn = ({ readonly built: Found } | { readonly because: string }) & Pick<Looked, "decided">;

function read(file: string, bytes: Buffer, { templates }: Trade, kept: KeptParts): OldJob | string {
  try {
    return isWorkbook(file)
      ? oldWorkbook(bytes, file, templates, { withBook: true, kept })
      : oldRecord(bytes.toString("utf8"), file, templates);
  } catch (error) {
    if (isOfficeBook(bytes, isWorkbook(file))) return "it is an office book";
    const { code } = error as Partial<RillbookError>;
    if (code === "template-without-roles") return "it is no job, but a workbook of another kind";
    throw error;
  }
}

async function givenBy(old: OldJob, books: Books, book: OfficeBook): Promise<readonly Value[]> {
  if (old.priced !== undefined) return old.priced;
  const own = old.office === undefined ? book : await books.get(old.office);
  if (typeof own === "string") throw new RillbookError("office-missing", `its office book: ${own}`);
  const { values } = old.inputs(old.model, own);
  fillBook(old.model, values, own);
  return values;
}

/** A job lies there as a record and as a workbook, often: it counts once, and not at all where the two differ. */
function onceEach(found: readonly Found[]): { jobs: Found[]; twice: PassedOver[] } {
  const byJob = new Map<string, Found[]>();
  for (const one of found) byJob.set(one.job, [...(byJob.get(one.job) ?? []), one]);
  const jobs: Found[] = [];
  const twice: PassedOver[] = [];
  for (const [first, ...others] of byJob.values() as Iterable<[Found, ...Found[]]>) {
    const unlike = others.find((one) => said(one) !== said(first));
    if (unlike === undefined) {
      jobs.push(first);
      for (const { file } of others) {
        twice.push({ file, because: `it is job ${first.job} once more, as ${first.file}` });
      }
      continue;
    }
    for (const { file } of [first, ...others]) {
      const names = [first, ...others].map((one) => one.file).filter((one) => one !== file);
      twice.push({
        file,
        because: `it says other hours of job ${first.job} than ${names.join(", ")}: leave one of them out, or give the jobs two names`,
      });
    }
  }
  return { jobs, twice };
}

/** Bids by the day of their decision, each job once. */
function decidedOnce(byJob: readonly (readonly Decided[])[]): {
  bids: Decided[];
  unlike: string[];
} {
  const bids: Decided[] = [];
  const unlike: string[] = [];
  for (const [first, ...others] of byJob) {
    if (first === undefined) continue;
    const same = others.every(({ won, price }) => won === first.won && price === first.price);
    if (same) bids.push(first);
    else unlike.push(first.job);
  }
  bids.sort((a, b) => a.on.localeCompare(b.on) || a.job.localeCompare(b.job));
  return { bids, unlike };
}

const said = ({ ended, tasks }: BuiltJob): string =>
  JSON.stringify([
    ended,
    tasks.map(({ task, code, quantity, hours }) => [task, code, quantity, hours]),
  ]);
