import type { Finding } from "../audit/index.js";
import type { OfficeBook } from "../book/office-book.js";
import type { JobRecord } from "../job/record.js";
import type { TrailEntry } from "../job/trail/entry.js";
import type { Template } from "../template/template.js";
import type { WorkbookContent } from "../workbook/read/content.js";
import type { Bid } from "./bid.js";
import { withKeptModels } from "./models.js";

/** What a workbook is written with besides its bid. */
export interface WriteOptions {
  /** A PNG or JPEG file, for the places that the pages keep for the logo. None is looked for on the disk. */
  readonly logo?: Uint8Array;
}

/**
 * Writes a bid as an .xlsx in which every figure is a live formula. The same bid gives the same bytes.
 * Rejects with RillbookError, code `logo-kind` or `logo-too-large`, for a logo that cannot be taken.
 */
export async function writeWorkbook(bid: Bid, { logo }: WriteOptions = {}): Promise<Uint8Array> {
  const [{ writeWorkbook: write }, { mustFitWorkbook }, { withLogo }, { logoIn }] =
    await Promise.all([
      import("../workbook/write/write.js"),
      import("../job/trail/longest.js"),
      import("../workbook/pictures/logo.js"),
      import("../book/logo.js"),
    ]);
  mustFitWorkbook(bid.trail, `job ${bid.identity.job}`);
  const picture = logo === undefined ? undefined : logoIn(logo, "The logo given");
  return withLogo(await write(bid.model, bid.values, bid.identity), bid.model, picture);
}

/**
 * Reads any .xlsx, edited or hostile: values, formulas, defined names, properties. Nothing is run, no link
 * followed. Rejects with WorkbookRefused for what is no workbook, breaks the format, or passes a limit.
 */
export async function readWorkbook(bytes: Uint8Array): Promise<WorkbookContent> {
  const { readWorkbook: read } = await import("../workbook/read/read.js");
  return read(bytes);
}

/** What an audit found. */
export interface AuditResult {
  /** Nothing was found but what is only "to know". */
  readonly clean: boolean;
  readonly findings: readonly Finding[];
  /** The findings for people, as `rillbook audit` tells them. */
  readonly text: string;
}

/**
 * Tells whether a workbook is still what its template and its trail say: formulas, figures, prices, names,
 * looks, stored results. Nothing in it is trusted or run.
 *
 * @param templates those there are; without the workbook's own, nothing but that is found
 * @param book the office book, to hold each price against
 */
export async function auditWorkbook(
  bytes: Uint8Array,
  templates: readonly Template[],
  book?: OfficeBook,
): Promise<AuditResult> {
  await withKeptModels();
  const [{ readWorkbook: read }, { auditWorkbook: audit }, { auditText }] = await Promise.all([
    import("../workbook/read/read.js"),
    import("../audit/audit.js"),
    import("../audit/report.js"),
  ]);
  const found = await audit(read(bytes, { look: true }), templates, { book });
  return { clean: found.clean, findings: found.findings, text: auditText(found) };
}

/** Who takes a workbook's inputs in, why, and into which record. */
export interface TakeOptions {
  readonly by?: string;
  readonly note?: string;
  /** The record to bring the changes into; a new one is made without it. */
  readonly into?: JobRecord;
}

/** A job record taken from a workbook. */
export interface TakenJob {
  readonly job: JobRecord;
  /** The entries of the trail that tell what was changed. */
  readonly entries: readonly TrailEntry[];
  /** What was changed besides inputs, none of which is taken in. */
  readonly findings: readonly Finding[];
}

/**
 * Makes a job record from an edited workbook: its inputs, each change with an entry in the trail.
 * Rejects with RillbookError for a foreign workbook, inputs against their rules, a trail that does not hold.
 */
export async function takeWorkbook(
  bytes: Uint8Array,
  templates: readonly Template[],
  { by, note, into }: TakeOptions = {},
): Promise<TakenJob> {
  await withKeptModels();
  const [{ readWorkbook: read }, { takeWorkbook: take }] = await Promise.all([
    import("../workbook/read/read.js"),
    import("../take/take.js"),
  ]);
  const taker = {
    time: new Date().toISOString(),
    ...(by === undefined ? {} : { by }),
    ...(note === undefined ? {} : { note }),
  };
  const target = into === undefined ? undefined : { record: into, file: `job ${into.job}` };
  return take(read(bytes), templates, "the workbook", taker, target);
}
