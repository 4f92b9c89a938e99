import { fullBook } from "../book/full-book.js";
import type { OfficeBook } from "../book/office-book.js";
import { writeOfficeBook } from "../book/write.js";
import { RillbookError } from "../errors.js";
import type { Value } from "../formula/value.js";
import {
  notLearned,
  overrunToTake,
  ratesToTake,
  type TakenOverrun,
  type TakenRate,
  withOverrun,
  withRates,
} from "../learn/index.js";
import { outputTo } from "../output/write.js";
import { tradeOf } from "../rerun/index.js";
import { reopened } from "../take/reopen.js";
import type { Model } from "../template/model.js";
import { layoutOf, rulesTables } from "../template/office-layout.js";
import type { Template } from "../template/template.js";
import { readWorkbookFile } from "../workbook/read/read-file.js";
import type { Context } from "./context.js";
import { counted, type LearnOptions, together } from "./learn-options.js";
import { withJudge } from "./with-judge.js";

/** A book that is not written yet has no mark. */
type UnmarkedBook = Omit<OfficeBook, "mark">;
type OverrunRules = NonNullable<NonNullable<Template["roles"]>["overrun"]>;

/** `--take`: what is marked in a workbook of learned rates goes into a new office book. */
export async function takeRates(
  context: Context,
  named: string[],
  options: LearnOptions,
  file: string,
): Promise<void> {
  const { into, output } = booksNamed(named, options);
  const target = await outputTo(output, { kind: "book", inputs: [file, into] });
  const learned = await marked(context, file);
  const trade = tradeOf(context.templates);
  const book = await trade.readBook(into);
  const reads = context.templates.find((one) => one.office !== undefined);
  const layout = reads === undefined ? [] : layoutOf(reads)(book.units ?? "us");
  const rules = reads?.roles?.overrun;
  const changed = changedBook(fullBook(book, layout), learned, rules);
  await target.write(await writeOfficeBook(changed, layout));
  const { taken, overrun } = learned;
  if (overrun === undefined && rules !== undefined && holdsRule(book, rules.fifth)) {
    context.err(
      `${into} holds an overrun that was learned with the rates before (${rules.half}, ${rules.fifth}). It stands in ${output} as it was: mark the overrun too, or clear it there.\n`,
    );
  }
  tellTaken(context, options, { taken, overrun, output, into });
}

/** The office book to take into, and the new one; no other option goes with them. */
function booksNamed(
  named: readonly string[],
  { into, output, office, excludedIn }: LearnOptions,
): { into: string; output: string } {
  if (named.length > 0 || office !== undefined || excludedIn !== undefined) {
    throw together(
      "--take reads one workbook of learned rates and one office book: leave out files, --office and --excluded-in.",
    );
  }
  if (into === undefined) throw together("Name the office book: --into <file>.");
  if (output === undefined) {
    throw new RillbookError(
      "output-missing",
      `Name the new office book, as in -o office-new.xlsx: ${into} stays as it is.`,
    );
  }
  return { into, output };
}

interface Marked {
  readonly model: Model;
  readonly values: readonly Value[];
  readonly taken: readonly TakenRate[];
  readonly overrun: TakenOverrun | undefined;
}

/** What is marked to be taken, calculated from the workbook's inputs. */
async function marked(context: Context, file: string): Promise<Marked> {
  const content = await readWorkbookFile(file);
  const { model, given, findings } = reopened(content, context.templates, file, {
    time: new Date().toISOString(),
  });
  if (model.template.learns === undefined) throw notLearned(model);
  // results that a program did not calculate again are calculated here; a formula that was changed is not
  const changed = findings.filter(({ code }) => code !== "value-stale");
  if (changed.length > 0) {
    throw new RillbookError(
      "learned-unusable",
      `${file} was changed in more than its inputs, so that what stands in it may not be what its formulas give: ${changed
        .slice(0, 5)
        .map(({ where }) => where)
        .join(", ")}. Learn again, and mark the rates there.`,
    );
  }
  const values = await withJudge(context, async (calculate) => {
    const { values, agreed } = calculate(model, given);
    await agreed;
    return values;
  });
  const taken = ratesToTake(model, values);
  const overrun = overrunToTake(model, values);
  if (taken.length === 0 && overrun === undefined) {
    throw new RillbookError(
      "learned-unusable",
      `${file} has no rate marked to be taken, and not the overrun, so nothing was written. Say yes under "Take it" on its first sheet.`,
    );
  }
  return { model, values, taken, overrun };
}

/** The book with what is taken; the overrun first, since it was learned against the rates that the book has now. */
function changedBook(
  full: UnmarkedBook,
  { model, values, taken, overrun }: Marked,
  rules: OverrunRules | undefined,
): UnmarkedBook {
  if (overrun === undefined) return withRates(full, taken, model);
  if (rules === undefined) {
    throw new RillbookError(
      "learned-unusable",
      `The overrun is marked to be taken, but no template has a place for it in its office book. Clear its mark.`,
    );
  }
  return withRates(withOverrun(full, overrun, rules, model, values), taken, model);
}

const holdsRule = (book: OfficeBook, rule: string): boolean =>
  (book.tables[rulesTables.rules] ?? []).some(
    (row) => row.rule === rule && typeof row.value === "number",
  );

interface Taken {
  readonly taken: readonly TakenRate[];
  readonly overrun: TakenOverrun | undefined;
  readonly output: string;
  readonly into: string;
}

function tellTaken(
  context: Context,
  { json }: LearnOptions,
  { taken, overrun, output, into }: Taken,
): void {
  if (json) {
    context.json({ written: output, from: into, taken, ...(overrun && { overrun }) }, 2);
    return;
  }
  for (const { code, means, unit, old, now, low, high, interval, jobs } of taken) {
    const figure = (value: number) => Number(value.toPrecision(4));
    context.out(
      `${code} (${means}): ${figure(old)} to ${figure(now)} ${unit}, from ${counted(jobs.length, "job")} (${jobs.join(", ")}), ${Math.round(interval * 100)}% interval ${figure(low)} to ${figure(high)}\n`,
    );
  }
  if (overrun !== undefined) {
    const share = (value: number) => `${value < 0 ? "-" : "+"}${Math.abs(value * 100).toFixed(1)}%`;
    context.out(
      `Overrun of a bid: ${share(overrun.half)} in half of the jobs (P50), ${share(overrun.fifth)} in one of five (P80), from ${counted(overrun.jobs.length, "job")} (${overrun.jobs.join(", ")})\n`,
    );
  }
  context.out(
    `Written: ${output}, with ${counted(taken.length, "rate")} changed. ${into} is as it was.\n`,
  );
}
