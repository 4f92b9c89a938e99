import type { OfficeBook } from "../book/office-book.js";
import { RillbookError } from "../errors.js";
import { CellError, type Value } from "../formula/value.js";
import { writtenDate } from "../job/date.js";
import type { BookRow } from "../template/book-layout.js";
import { placeholderColumn } from "../template/book-layout.js";
import type { Learns } from "../template/learns.js";
import { columnValues, type Model, valueNamed } from "../template/model.js";

/** A rate that a person marked to be taken. */
export interface TakenRate {
  readonly code: string;
  readonly means: string;
  readonly unit: string;
  readonly old: number;
  readonly now: number;
  readonly low: number;
  readonly high: number;
  /** The chance that the interval is meant to hold. */
  readonly interval: number;
  readonly on: string;
  /** The numbers of the jobs that it rests on. */
  readonly jobs: readonly string[];
}

/** The rates of a calculated workbook that are marked to be taken. Throws RillbookError where one has no figure, or no job. */
export function ratesToTake(model: Model, values: readonly Value[]): TakenRate[] {
  const { learns } = model.template;
  if (learns === undefined) throw notLearned(model);
  const { rates, learned, evidence } = learns;
  const column = (table: string, key: string) => columnValues(model, values, table, key);
  const of = (key: keyof Omit<Learns["rates"], "table">) => column(rates.table, rates[key]);
  const found = (key: keyof Omit<Learns["learned"], "table">) =>
    column(learned.table, learned[key]);
  const [codes, means, units, old] = [of("code"), of("means"), of("unit"), of("inBook")];
  const [marked, now, jobs] = [found("takeIt"), found("forBook"), found("jobs")];
  const [low, high] = [found("low"), found("high")];
  const [byRow, jobOf, counted] = [evidence.code, evidence.job, evidence.counted].map((key) =>
    column(evidence.table, key),
  ) as [Value[], Value[], Value[]];
  return codes.flatMap((code, row): TakenRate[] => {
    if (typeof code !== "string" || code === "" || marked[row] !== true) return [];
    const figure = (list: readonly Value[]) => {
      const value = list[row] ?? null;
      if (typeof value === "number") return value;
      const said = value instanceof CellError ? value.code : "nothing";
      throw new RillbookError(
        "learned-unusable",
        `Rate ${code} is marked to be taken, but holds ${said}. Clear its mark, or mend what the checks of the workbook tell.`,
      );
    };
    if (figure(jobs) < 1 || figure(now) <= 0) {
      throw new RillbookError(
        "learned-unusable",
        `Rate ${code} is marked to be taken, but no built job tells of it. Clear its mark in ${learned.table}.${learned.takeIt}.`,
      );
    }
    const own = jobOf.filter((_, i) => byRow[i] === code && counted[i] === 1).map(String);
    return [
      {
        ...{ code, means: String(means[row] ?? ""), unit: String(units[row] ?? "") },
        ...{ old: figure(old), now: figure(now), low: figure(low), high: figure(high) },
        interval: Number(valueNamed(model, values, learns.interval)),
        on: writtenDate(Number(valueNamed(model, values, learns.on))),
        jobs: [...new Set(own)],
      },
    ];
  });
}

export const notLearned = ({ template: { name } }: Pick<Model, "template">): RillbookError =>
  new RillbookError(
    "learned-unusable",
    `The workbook was made with the template ${name}, which holds no learned rates. Give one that rillbook learn wrote.`,
  );

/** A source of the office book has room for so many characters. */
const longestSource = 200;

/** The book with some of its rates put to what was learned, each with where it comes from; all other rows as they are. */
export function withRates<T extends Pick<OfficeBook, "name" | "tables" | "units">>(
  book: T,
  taken: readonly TakenRate[],
  { template: { learns }, system }: Model,
): T {
  if (learns === undefined) throw new RangeError("The template does not learn.");
  const { table, code, value, source } = learns.book;
  const left = new Map(taken.map((one) => [one.code.toLowerCase(), one]));
  const rows = (book.tables[table] ?? []).map((row): BookRow => {
    const one = left.get(String(row[code]).toLowerCase());
    if (one === undefined) return row;
    left.delete(one.code.toLowerCase());
    mustBeAsLearned(book.name, learns, one, row);
    const { [placeholderColumn.key]: _, ...kept } = row;
    return { ...kept, [value]: one.now, [source]: sourceOf(one, row[source]) };
  });
  const [lost] = left.values();
  if (lost !== undefined) mustBeAsLearned(book.name, learns, lost, undefined);
  if ((book.units ?? "us") !== system)
    throw moved(book.name, taken[0] as TakenRate, `units ${book.units ?? "us"}`);
  return { ...book, tables: { ...book.tables, [table]: rows } };
}

/** Throws RillbookError where the book's rate is not the one that was learned against. */
export function mustHaveRate(
  book: Pick<OfficeBook, "name" | "tables">,
  learns: Learns,
  one: LearnedAgainst,
): void {
  const { table, code } = learns.book;
  const row = (book.tables[table] ?? []).find(
    (each) => String(each[code]).toLowerCase() === one.code.toLowerCase(),
  );
  mustBeAsLearned(book.name, learns, one, row);
}

type LearnedAgainst = Pick<TakenRate, "code" | "unit" | "old">;

function mustBeAsLearned(
  book: string,
  { book: { value, unit } }: Learns,
  one: LearnedAgainst,
  row: BookRow | undefined,
): void {
  if (row !== undefined && isAs(row[value], one.old) && row[unit] === one.unit) return;
  throw moved(book, one, row === undefined ? "no such row" : `${row[value]} ${row[unit]}`);
}

const isAs = (value: unknown, old: number): boolean =>
  typeof value === "number" && Math.abs(value - old) <= 1e-9 * Math.abs(old);

const moved = (book: string, { code, old, unit }: LearnedAgainst, found: string): RillbookError =>
  new RillbookError(
    "book-moved",
    `Rate ${code} was learned against ${old} ${unit}, but the office book ${book} has ${found}. Nothing was written: learn again against this book.`,
  );

const figures = (value: number): string => String(Number(value.toPrecision(3)));

/** Where a learned rate comes from, within the room of the cell: as many job numbers as fit, the old source where it fits. */
function sourceOf({ on, jobs, interval, low, high, old }: TakenRate, before: unknown): string {
  const count = jobs.length === 1 ? "1 built job" : `${jobs.length} built jobs`;
  const range = `${Math.round(interval * 100)}% interval ${figures(low)} to ${figures(high)}; was ${figures(old)}`;
  const said = (names: string) => `Learned ${on} from ${count}${names}; ${range}.`;
  for (let named = jobs.length; named > 0; named--) {
    const more = jobs.length - named;
    const names = ` (${jobs.slice(0, named).join(", ")}${more > 0 ? ` and ${more} more` : ""})`;
    if (said(names).length > longestSource) continue;
    const whole = `${said(names)} Before: ${String(before ?? "")}`;
    return before !== undefined && whole.length <= longestSource ? whole : said(names);
  }
  return said("");
}
