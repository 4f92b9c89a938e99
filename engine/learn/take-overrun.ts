import type { OfficeBook } from "../book/office-book.js";
import { RillbookError } from "../errors.js";
import type { Value } from "../formula/value.js";
import { writtenDate } from "../job/date.js";
import type { BookRow } from "../template/book-layout.js";
import { placeholderColumn } from "../template/book-layout.js";
import { columnValues, type Model, valueNamed } from "../template/model.js";
import { rulesTables } from "../template/office-layout.js";
import type { Overrun } from "../template/template.js";
import { mustHaveRate, notLearned } from "./take-rates.js";

/** The overrun that a person marked to be taken. */
export interface TakenOverrun {
  /** As shares: in half of the jobs, and in one of five. */
  readonly half: number;
  readonly fifth: number;
  readonly on: string;
  /** The numbers of the jobs that it rests on. */
  readonly jobs: readonly string[];
}

/** The overrun of a calculated workbook, where it is marked. Throws RillbookError where it has no figure or no job. */
export function overrunToTake(model: Model, values: readonly Value[]): TakenOverrun | undefined {
  const { learns } = model.template;
  if (learns === undefined) throw notLearned(model);
  const { overrun, jobs: list } = learns;
  const named = (name: string) => valueNamed(model, values, name);
  if (named(overrun.takeIt) !== true) return undefined;
  const [half, fifth] = [named(overrun.half), named(overrun.fifth)];
  const [table = "", column = ""] = overrun.counts.split(".");
  const counts = columnValues(model, values, table, column);
  const jobs = columnValues(model, values, list.table, list.job)
    .filter((_, row) => counts[row] === 1)
    .map(String);
  if (typeof half === "number" && typeof fifth === "number" && jobs.length > 0) {
    return { half, fifth, jobs, on: writtenDate(Number(named(learns.on))) };
  }
  throw new RillbookError(
    "learned-unusable",
    `The overrun is marked to be taken in ${overrun.takeIt}, but no built job tells of it, or it holds an error. Clear its mark.`,
  );
}

/**
 * The book with the overrun in its rules. It holds for the rates that it was learned with: every rate with a job must stand in
 * the book as it was learned against. Throws RillbookError where one does not.
 *
 * @param into the rules, as the template that reads the book names them
 */
export function withOverrun<T extends Pick<OfficeBook, "name" | "tables">>(
  book: T,
  { half, fifth, jobs, on }: TakenOverrun,
  into: Overrun,
  model: Model,
  values: readonly Value[],
): T {
  mustHaveRates(book, model, values);
  const count = jobs.length === 1 ? "1 built job" : `${jobs.length} built jobs`;
  const now = new Map<string, string | number>([
    [into.half, share(half)],
    [into.fifth, share(fifth)],
    [into.jobs, jobs.length],
    [into.source, `Learned ${on} from ${count} (${someOf(jobs)}).`],
  ]);
  const rows = (book.tables[rulesTables.rules] ?? []).map((row): BookRow => {
    const value = now.get(String(row.rule));
    if (value === undefined) return row;
    now.delete(String(row.rule));
    const { [placeholderColumn.key]: _, ...kept } = row;
    return { ...kept, value };
  });
  const lost = [...now].map(([rule, value]) => ({ rule, value }));
  return { ...book, tables: { ...book.tables, [rulesTables.rules]: [...rows, ...lost] } };
}

/** To a thousandth, as the cells of the book show it. */
const share = (value: number): number => Math.round(value * 1000) / 1000;

const mostNamed = 20;

const someOf = (jobs: readonly string[]): string =>
  jobs.length <= mostNamed
    ? jobs.join(", ")
    : `${jobs.slice(0, mostNamed).join(", ")} and ${jobs.length - mostNamed} more`;

function mustHaveRates(
  book: Pick<OfficeBook, "name" | "tables">,
  model: Model,
  values: readonly Value[],
): void {
  const { learns } = model.template;
  if (learns === undefined) throw notLearned(model);
  const { rates, learned } = learns;
  const at = (table: string, key: string) => columnValues(model, values, table, key);
  const [codes, units, old] = [rates.code, rates.unit, rates.inBook].map((key) =>
    at(rates.table, key),
  );
  at(learned.table, learned.jobs).forEach((jobs, row) => {
    if (typeof jobs !== "number" || jobs < 1) return;
    mustHaveRate(book, learns, {
      code: String(codes?.[row]),
      unit: String(units?.[row]),
      old: Number(old?.[row]),
    });
  });
}
