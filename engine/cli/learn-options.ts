import { RillbookError } from "../errors.js";

/** What `learn` may be told. */
export interface LearnOptions {
  readonly office?: string;
  readonly output?: string;
  readonly asOf?: string;
  readonly excludedIn?: string;
  readonly take?: string;
  readonly into?: string;
  readonly json?: true;
}

/** `3 jobs`. */
export const counted = (count: number, what: string): string =>
  `${count} ${what}${count === 1 ? "" : "s"}`;

/** Options that do not go together. */
export const together = (sentence: string): RillbookError =>
  new RillbookError("options-missing", `${sentence} See --help.`);
