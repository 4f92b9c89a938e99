import { stat } from "node:fs/promises";
import { dirname, resolve } from "node:path";
import { identityOf } from "../book/identity-of.js";
import { loadJob } from "../book/load-job.js";
import { logoOf } from "../book/logo.js";
import type { OfficeBook } from "../book/office-book.js";
import { readOfficeBook } from "../book/read.js";
import { underBook } from "../book/refresh.js";
import { RillbookError } from "../errors.js";
import type { Value } from "../formula/value.js";
import type { TrailEntry } from "../job/trail/entry.js";
import { type Reopened, reopened } from "../take/reopen.js";
import type { Model } from "../template/model.js";
import { layoutOf } from "../template/office-layout.js";
import type { Template } from "../template/template.js";
import type { PictureFile } from "../workbook/pictures/picture.js";
import type { WorkbookContent } from "../workbook/read/content.js";
import type { Identity } from "../workbook/write/identity.js";
import { pathFrom } from "./beside.js";

/** What a bid is written from, whatever file it came from. */
export interface BidSource {
  readonly model: Model;
  readonly given: readonly Value[];
  readonly identity: Identity;
  /** The paths of all that was read. */
  readonly files: readonly string[];
  /** The office book was read, and not only what a workbook carries of it. */
  readonly bookRead: boolean;
  /** The logo that it names. */
  readonly logo?: PictureFile;
  /** What was taken in from a workbook, and what of it was not. */
  readonly entries: readonly TrailEntry[];
  readonly findings: Reopened["findings"];
}

export interface SourceOptions {
  readonly office?: string;
  readonly refreshPrices?: true;
  readonly by?: string;
  readonly note?: string;
}

export const isWorkbookName = (file: string): boolean => /\.xls[xm]$/i.test(file);

/** A job record with its office book. Inputs that it lacks stay blank. */
export async function sourceFromRecord(
  file: string,
  templates: readonly Template[],
  office: string | undefined,
): Promise<BidSource> {
  const loaded = await loadJob(file, templates, office, "left blank");
  const { model, given, files } = loaded;
  const logo = await logoOf(model, given, files.at(-1) as string);
  return {
    ...{ model, given, identity: identityOf(loaded), files, bookRead: true },
    ...(logo === undefined ? {} : { logo }),
    ...{ entries: [], findings: [] },
  };
}

/** A filled-in workbook with the prices and rules that it carries, or with those of an office book. */
export async function sourceFromWorkbook(
  content: WorkbookContent,
  file: string,
  templates: readonly Template[],
  options: SourceOptions,
): Promise<BidSource> {
  const { by, note, office } = options;
  const taker = {
    time: new Date().toISOString(),
    ...(by === undefined ? {} : { by }),
    ...(note === undefined ? {} : { note }),
  };
  const opened = reopened(content, templates, file, taker);
  const { model, identity: told, trail, entries, findings } = opened;
  const named = told.office === undefined ? undefined : resolve(dirname(file), told.office);
  const refreshed = options.refreshPrices === true || office !== undefined;
  const path = office ?? named;
  if (refreshed && path === undefined) throw noBookNamed(file, told.book);
  if (!refreshed && opened.pricesUntold !== undefined) {
    throw pricesUntold(file, opened.pricesUntold, told.office);
  }
  const book = refreshed && path !== undefined ? await bookAt(path, file, model) : undefined;
  const identity: Identity = {
    job: told.job ?? "",
    template: model.template.name,
    version: model.template.version,
    units: model.system,
    ...(told.about === undefined ? {} : { about: told.about }),
    ...(book === undefined
      ? {
          book: told.book ?? "(not named)",
          bookAsOf: told.bookAsOf ?? "(unknown)",
          bookMark: told.bookMark ?? "",
        }
      : saidOfBook(book)),
    ...officeOf(told.office, file, office),
    trail,
  };
  const given =
    book === undefined ? opened.given : underBook(model, opened.given, opened.office, book);
  const files = [file, ...(refreshed && path !== undefined ? [path] : [])];
  const logo = refreshed ? await logoOf(model, given, files.at(-1) as string) : undefined;
  return {
    ...{ model, given, identity, files, bookRead: refreshed, entries, findings },
    ...(logo === undefined ? {} : { logo }),
  };
}

async function bookAt(path: string, file: string, { template }: Model): Promise<OfficeBook> {
  if ((await stat(path).catch(() => undefined)) === undefined) {
    throw new RillbookError(
      "office-missing",
      `The office book ${path} does not exist, so ${file} is left as it is. Give another with --office <file>; without --office and --refresh-prices the prices stay that the workbook carries.`,
    );
  }
  return readOfficeBook(path, layoutOf(template));
}

/** The book that a workbook names; where it names none, the one given is named from now on. */
function officeOf(named: string | undefined, file: string, given: string | undefined) {
  const office = named ?? (given === undefined ? undefined : pathFrom(file, given));
  return office === undefined ? {} : { office };
}

/** What stands in the cells now may be anybody's prices. */
function pricesUntold(file: string, why: string, named: string | undefined): RillbookError {
  const refresh = named === undefined ? "" : `, or --refresh-prices for the one it names, ${named}`;
  return new RillbookError(
    "trail-broken",
    `Nothing shows with which prices ${file} was written: ${why}. No bid is written with prices that may be anybody's. Give the office book: rillbook bid ${file} -o <new workbook> --office <file>${refresh}; or use a copy whose sheet Trail and properties are whole.`,
  );
}

/** Placeholders may not take the place of prices because nobody named the book. */
const noBookNamed = (file: string, book = "(not named)"): RillbookError =>
  new RillbookError(
    "office-missing",
    `--refresh-prices takes prices and rules from the office book that a workbook names, but ${file} names no file (its prices are of "${book}"). Give the book: --office <file>; the workbook names it from then on.`,
  );

const saidOfBook = ({ name, asOf, mark }: OfficeBook) => ({
  book: name,
  bookAsOf: asOf,
  bookMark: mark,
});
