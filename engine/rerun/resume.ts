import { stat } from "node:fs/promises";
import { RillbookError } from "../errors.js";
import type { ResultLine, RunLine } from "./lines.js";
import { readLines } from "./result-file.js";

/** What a file came to, for counting. */
export interface ResultKind {
  readonly kind: ResultLine["line"];
  readonly judged: boolean;
}

export const resultOf = ({ line, judged }: ResultLine): ResultKind => ({
  kind: line,
  judged: judged ?? false,
});

/** What an earlier run left. */
export interface Left {
  /** What each file came to, by path. */
  readonly results: ReadonlyMap<string, ResultKind>;
  /** The mark of each file done, by path. */
  readonly done: ReadonlyMap<string, string>;
  /** Where to go on writing. */
  readonly at: number;
}

/**
 * Reads what an unfinished run left, so that the same run can go on; undefined where there is no file yet. Files without a mark
 * (unreadable ones) are tried again. Throws RillbookError where another run was asked for.
 */
export async function leftBy(path: string, asked: RunLine): Promise<Left | undefined> {
  if ((await stat(path).catch(() => undefined)) === undefined) return undefined;
  const results = new Map<string, ResultKind>();
  const done = new Map<string, string>();
  let at = 0;
  for await (const { line, from, length } of readLines(path)) {
    if (line.line === "end") break;
    if (line.line === "run") mustAgree(line, asked, path);
    else {
      results.set(line.file, resultOf(line));
      if (line.mark !== undefined) done.set(line.file, line.mark);
    }
    at = from + length + 1;
  }
  if (at > 0) return { results, done, at };
  throw new RillbookError(
    "result-file",
    `${path} holds no run to go on with. Start again without --resume.`,
  );
}

/** Throws RillbookError naming the first thing in which two runs differ. */
export function mustAgree(one: RunLine, other: RunLine, path: string): void {
  const things = [
    ["the office book's mark", one.book.mark, other.book.mark],
    ["--template-version", one.versions, other.versions],
    ["--as-of", one.asOf, other.asOf],
    ["--filter", one.filters.join(" "), other.filters.join(" ")],
    ["--moved", one.moved, other.moved],
    ["how many parts", one.part?.of, other.part?.of],
  ] as const;
  for (const [thing, first, second] of things) {
    if (first === second) continue;
    throw new RillbookError(
      "runs-differ",
      `${path} is of another run: ${thing} was ${JSON.stringify(first ?? "none")}, and is ${JSON.stringify(second ?? "none")} here. Ask for the same, or start again.`,
    );
  }
}
