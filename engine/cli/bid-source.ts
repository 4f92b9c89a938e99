import { dirname, resolve } from "node:path";
import { identityOf } from "../book/identity-of.js";
import { loadJob } from "../book/load-job.js";
import { logoOf } from "../book/logo.js";
import type { OfficeBook } from "../book/office-book.js";
import { readOfficeBook } from "../book/read.js";
import { underBook } from "../book/refresh.js";
import { starterBook } from "../book/starter.js";
import type { Value } from "../formula/value.js";
import type { TrailEntry } from "../job/trail/entry.js";
import { type Reopened, reopened } from "../take/reopen.js";
import type { Model } from "../template/model.js";
import { layoutOf } from "../template/office-layout.js";
import type { Template } from "../template/template.js";
import type { PictureFile } from "../workbook/pictures/picture.js";
import type { WorkbookContent } from "../workbook/read/content.js";
import type { Identity } from "../workbook/write/identity.js";

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
  const path = refreshed ? (office ?? named) : undefined;
  const book = refreshed ? await bookAt(path, model) : undefined;
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
    ...(told.office === undefined ? {} : { office: told.office }),
    trail,
  };
  const given =
    book === undefined ? opened.given : underBook(model, opened.given, opened.office, book);
  const files = [file, ...(path === undefined ? [] : [path])];
  const logo = refreshed ? await logoOf(model, given, files.at(-1) as string) : undefined;
  return {
    ...{ model, given, identity, files, bookRead: refreshed, entries, findings },
    ...(logo === undefined ? {} : { logo }),
  };
}

const bookAt = async (
  path: string | undefined,
  { template, system }: Model,
): Promise<OfficeBook> =>
  path === undefined ? starterBook(template, system) : readOfficeBook(path, layoutOf(template));

const saidOfBook = ({ name, asOf, mark }: OfficeBook) => ({
  book: name,
  bookAsOf: asOf,
  bookMark: mark,
});
