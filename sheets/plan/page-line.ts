import { formulaInRow, sentenceInRow, type TableBlock } from "../../engine/template/index.js";

/** A line that a printed page may carry: its text, and when it is wanted. */
export interface PageLine {
  /** A text formula. */
  readonly says: string;
  /** A condition; the line is always there where it is absent. */
  readonly when?: string;
  /** Where lines stand beside one another, it begins a row of its own: a heading, a step of the work. */
  readonly begins?: true;
}

/** A line with the section of the page in which it stands. */
export interface PlacedLine<Section extends string> extends PageLine {
  readonly section: Section;
  /** The task whose box this line is. */
  readonly task?: string;
  /** The task under whose box this line stands; without it, at the end of its section. */
  readonly under?: string;
}

/** A stretch of a page: what it begins with, before the lines of the parts. */
export interface Section {
  readonly name: string;
  readonly opens?: PageLine;
}

/** Marks a line as a heading: the page shows it in bold. */
export const headingMark = "■ ";

export const heading = (words: string, when?: string): PageLine => ({
  says: `"${headingMark}${words}"`,
  begins: true,
  ...(when === undefined ? {} : { when }),
});

const firstFailure = "FAILURES_SAID(checks_failed,INDEX(check_shown.check,1),INDEX(check_shown.sheet,1))";

/** The first line of a page that goes out of the office: it says so while the bid does not stand, or has no price yet. */
export const draftLine: PageLine = {
  says: `~DRAFT, not to be handed out: {TEXTJOIN("; ",TRUE,errors_said,${firstFailure},IF(described,"","no price yet"))}. See the sheet {IF(AND(bid_stands,NOT(described)),"Summary","Checks")}.`,
  when: "NOT(AND(bid_stands,described))",
};

/** A sentence with figures in braces, on a line of its own. */
export function line<S extends string>(section: S, sentence: string, when?: string): PlacedLine<S> {
  return { section, says: `~${sentence}`, ...(when === undefined ? {} : { when }) };
}

/** The same behind a bullet. */
export const bullet = <S extends string>(section: S, sentence: string, when?: string) =>
  line(section, `•  ${sentence}`, when);

/** Lines that stand under the box of a task, whichever section that task is in. */
export const under = <S extends string>(task: string, ...lines: readonly PlacedLine<S>[]): PlacedLine<S>[] =>
  lines.map((one) => ({ ...one, under: task }));

export interface RowOptions {
  /** When a row has its line; where the table's rows are `filled`, unless told. */
  readonly when?: string;
  /** Tables beside this one, whose columns the sentence may name as well. */
  readonly beside?: readonly TableBlock[];
}

/**
 * A line for each row of a table. The sentence and the condition name the table's columns barely:
 * `eachRow("set out", fallsTable, "{name}: lip {width} wide")`; `{row}` is the row's number.
 */
export function eachRow<S extends string>(
  section: S,
  table: TableBlock,
  sentence: string,
  { when = table.filled, beside = [] }: RowOptions = {},
): PlacedLine<S>[] {
  const tables = [table, ...beside];
  return Array.from({ length: table.rows }, (_, i) => {
    const wanted = when === undefined ? undefined : formulaInRow(when, i + 1, tables);
    return line(section, sentenceInRow(sentence, i + 1, tables), wanted);
  });
}

/** The same behind a bullet. */
export const bulletEachRow = <S extends string>(
  section: S,
  table: TableBlock,
  sentence: string,
  options: RowOptions = {},
): PlacedLine<S>[] => eachRow(section, table, `•  ${sentence}`, options);

/**
 * The lines of a page: section by section, each as its heading and the lines placed in it; under the box of a
 * task, what that task needs to know. Throws RangeError for a line under a task that no box is of.
 */
export function pageOf(plan: readonly Section[], lines: readonly PlacedLine<string>[]): PlacedLine<string>[] {
  const boxes = new Map(lines.flatMap((one) => (one.task === undefined ? [] : [[one.task, one.section] as const])));
  const lost = lines.find((one) => one.under !== undefined && !boxes.has(one.under));
  if (lost !== undefined) {
    throw new RangeError(
      `The line ${lost.says} stands under the task "${lost.under}", which has no box. Name a task of the list.`,
    );
  }
  const below = ({ task, section }: PlacedLine<string>) =>
    task === undefined ? [] : lines.filter((one) => one.under === task).map((one) => ({ ...one, section }));
  return plan.flatMap(({ name, opens }) => [
    ...(opens === undefined ? [] : [{ section: name, ...opens }]),
    ...lines.filter((one) => one.section === name && one.under === undefined).flatMap((one) => [one, ...below(one)]),
  ]);
}
