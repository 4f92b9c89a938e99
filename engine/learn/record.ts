import type { OfficeBook } from "../book/office-book.js";
import { RillbookError } from "../errors.js";
import type { JobRecord, RowValues } from "../job/record.js";
import type { BookRow } from "../template/book-layout.js";
import type { Learns } from "../template/learns.js";
import { columnOf, type Model } from "../template/model.js";
import { modelOf } from "../template/models.js";
import type { Template } from "../template/template.js";
import type { Decided } from "./built-job.js";
import type { Found } from "./collect.js";
import { type CarriedOver, type Exclusion, excluded } from "./exclusions.js";

/** A template whose workbooks learn. */
export type Learning = Template & { readonly learns: Learns };

export const isLearning = (template: Template): template is Learning =>
  template.learns !== undefined;

/** The inputs of a workbook of learned rates, and what did not go in. */
export interface Evidence {
  readonly model: Model;
  readonly record: JobRecord;
  readonly jobs: readonly Found[];
  /** The oldest jobs, where there are more rows than the largest workbook holds. */
  readonly tooMany: readonly Found[];
  readonly rows: number;
  /** The oldest bids won or lost for which there is no room. */
  readonly decidedLeftOut: number;
  /** Codes of tasks for which the office book has no rate. */
  readonly unknown: readonly string[];
  /** What became of rows that an older workbook left out. */
  readonly carried: CarriedOver;
}

/**
 * Puts built jobs into the smallest workbook that holds them. Nothing is calculated here: quantities and hours go
 * in as the jobs say them, rates as the office book says them.
 * Throws RillbookError where no job is built.
 *
 * @param templates those whose workbooks learn
 * @param on the day of learning: 2027-03-01
 * @param exclusions rows that an older workbook leaves out, which this one leaves out again
 */
export function evidenceOf(
  found: readonly Found[],
  decided: readonly Decided[],
  book: OfficeBook,
  templates: readonly Learning[],
  on: string,
  exclusions: readonly Exclusion[] = [],
): Evidence {
  const bySize = [...templates].sort((a, b) => sizeOf(a).rows - sizeOf(b).rows);
  const template = bySize.find((one) => holds(one, found)) ?? bySize.at(-1);
  if (template === undefined) throw new RangeError("No template learns.");
  const { learns } = template;
  const rates = ratesIn(book, learns);
  const jobs = fitting(template, found);
  const tooMany = found.filter((one) => !jobs.includes(one));
  const model = modelOf(template, book.units ?? "us");
  const told = jobs.flatMap((one) => rowsOf(one, learns, rates));
  if (told.length === 0) throw nothingBuilt();
  const { rows, carried } = excluded(told, exclusions, learns);
  const codes = codesIn(jobs, rates);
  const room = roomOf(template, learns.rates.table);
  // those with jobs first, where a book has more rates than a workbook has rows
  const used = new Set(rows.map((row) => String(row[learns.evidence.code])));
  const kept = [...codes].sort((a, b) => Number(used.has(b)) - Number(used.has(a))).slice(0, room);
  const unknown = [...new Set(jobs.flatMap(({ tasks }) => tasks.map(({ code }) => code)))].filter(
    (code) => !rates.has(code.toLowerCase()),
  );
  const newest = decided.slice(-roomOf(template, learns.decided.table));
  const record: JobRecord = {
    ...{
      rillbook: 1,
      job: `Rates learned on ${on}`,
      template: template.name,
      version: template.version,
    },
    units: model.system,
    about: `Production rates of ${jobs.length} built jobs against the office book ${book.name} of ${book.asOf}.`,
    inputs: {
      [learns.on]: on,
      [learns.rates.table]: codes
        .filter((code) => kept.includes(code))
        .map((code) => rateRow(code, rates, learns)),
      [learns.ways.table]: waysIn(rows, learns, roomOf(template, learns.ways.table)),
      [learns.jobs.table]: jobs.map(({ job, ended }) => ({
        [learns.jobs.job]: job,
        [learns.jobs.ended]: ended,
      })),
      [learns.decided.table]: newest.map((one) => ({
        [learns.decided.job]: one.job,
        [learns.decided.won]: one.won,
        [learns.decided.price]: one.price,
        [learns.decided.cost]: one.cost,
      })),
      [learns.evidence.table]: rows,
    },
  };
  const decidedLeftOut = decided.length - newest.length;
  return { model, record, jobs, tooMany, rows: rows.length, unknown, decidedLeftOut, carried };
}

const nothingBuilt = (): RillbookError =>
  new RillbookError(
    "nothing-built",
    "None of the files is a built job that says what a task took, so there is nothing to learn from, and nothing was written. On sheet Built of a job choose the state, give the last day of work, and for each task quantity and man-hours.",
  );

const tableNamed = (template: Template, name: string) =>
  template.sheets
    .flatMap(({ blocks }) => blocks)
    .find((block) => block.kind === "table" && block.name === name);

function roomOf(template: Template, name: string): number {
  const block = tableNamed(template, name);
  return block?.kind === "table" ? block.rows : 0;
}

const sizeOf = (template: Learning) => ({
  rows: roomOf(template, template.learns.evidence.table),
  jobs: roomOf(template, template.learns.jobs.table),
});

const tasksOf = (jobs: readonly Found[]): number =>
  jobs.reduce((sum, { tasks }) => sum + tasks.length, 0);

function holds(template: Learning, jobs: readonly Found[]): boolean {
  const { rows, jobs: most } = sizeOf(template);
  return tasksOf(jobs) <= rows && jobs.length <= most;
}

/** All jobs, or the newest ones that fit: they come in the order of their end. */
function fitting(template: Learning, found: readonly Found[]): readonly Found[] {
  let jobs = found;
  while (!holds(template, jobs)) jobs = jobs.slice(1);
  return jobs;
}

type Rates = ReadonlyMap<string, BookRow>;

const ratesIn = (book: OfficeBook, { book: { table, code } }: Learns): Rates =>
  new Map((book.tables[table] ?? []).map((row) => [String(row[code]).toLowerCase(), row]));

/** The codes of all tasks of the jobs' templates that the book has a rate for, in the book's order and spelling. */
function codesIn(jobs: readonly Found[], rates: Rates): string[] {
  const named = new Set<string>();
  for (const model of new Set(jobs.map((one) => one.model))) {
    const { tasks } = model.template.roles?.built ?? {};
    for (const name of tasks === undefined ? [] : [tasks.rateCode, tasks.handRateCode]) {
      const [table = "", column = ""] = name.split(".");
      for (const { fixed } of columnOf(model, table, column).cells)
        named.add(String(fixed).toLowerCase());
    }
  }
  return [...rates.keys()].filter((code) => named.has(code));
}

function rateRow(code: string, rates: Rates, { rates: to, book: from }: Learns): RowValues {
  const row = rates.get(code) ?? {};
  return {
    [to.code]: row[from.code] ?? code,
    [to.means]: row[from.means] ?? "",
    [to.unit]: row[from.unit] ?? "",
    [to.inBook]: row[from.value] ?? null,
  };
}

/** The rows of a job; those of one rate one below the other, since they count as one job together. */
function rowsOf(
  job: Found,
  { evidence: to, book: { code: codeColumn } }: Learns,
  rates: Rates,
): RowValues[] {
  const known = job.tasks.filter(({ code }) => rates.has(code.toLowerCase()));
  const codes = [...new Set(known.map(({ code }) => code))];
  const inOrder = [...known].sort((a, b) => codes.indexOf(a.code) - codes.indexOf(b.code));
  return inOrder.map(({ task, code, unit, quantity, hours, factor, planned, plannedQuantity }) => ({
    [to.task]: task,
    [to.job]: job.job,
    [to.ended]: job.ended,
    [to.code]: rates.get(code.toLowerCase())?.[codeColumn] ?? code,
    [to.condition]: job.condition,
    [to.quantity]: quantity,
    [to.unit]: unit,
    [to.hours]: hours,
    [to.factor]: factor,
    [to.planned]: planned,
    [to.plannedQuantity]: plannedQuantity ?? null,
  }));
}

/** Each rate with each condition under which it was worked, as far as there is room. */
function waysIn(rows: readonly RowValues[], { evidence, ways }: Learns, room: number): RowValues[] {
  const found = new Map<string, RowValues>();
  for (const row of rows) {
    const [code, condition] = [row[evidence.code] ?? null, row[evidence.condition] ?? null];
    if (condition === null || condition === "") continue;
    found.set(JSON.stringify([code, condition]), {
      [ways.code]: code,
      [ways.condition]: condition,
    });
  }
  return [...found]
    .sort(([a], [b]) => a.localeCompare(b))
    .map(([, row]) => row)
    .slice(0, room);
}
