import type { UnitSystem } from "../units/quantity.js";

/** The lines of a result file: one JSON object each. The first says which run it is. */
export type Line = RunLine | ResultLine | EndLine;

/** What was asked for. Parts and resumed runs go together only where these agree. */
export interface RunLine {
  readonly line: "run";
  readonly rillbook: 1;
  readonly book: { readonly name: string; readonly asOf: string; readonly mark: string };
  readonly versions: "own" | "newest";
  /** Quotes that end before this day count as expired. */
  readonly asOf: string;
  readonly filters: readonly string[];
  readonly moved: boolean;
  readonly part?: { readonly part: number; readonly of: number };
}

/** What came of one file. */
export type ResultLine = JobLine | ErrorLine | SkippedLine;

interface OfFile {
  readonly file: string;
  /** SHA-256 of the file's content, 16 digits of it. */
  readonly mark?: string;
  /** Both evaluators calculated the job, and agreed. */
  readonly judged?: true;
}

export interface JobLine extends OfFile {
  readonly line: "job";
  readonly source: "record" | "workbook";
  readonly job: string;
  readonly template: string;
  /** The template version the job was made with, and the one it was calculated by. */
  readonly version: number;
  readonly by: number;
  readonly units: UnitSystem;
  /** What the job said before; `unknown` says why that is not known. */
  readonly before: Figures | { readonly unknown: string };
  readonly now: Figures;
  /** Checks that fail now and did not before, or of which that is not known; not those of `missing`. */
  readonly failing: readonly FailingCheck[];
  /** How many checks fail now, old ones too. */
  readonly fails: { readonly must: number; readonly look: number };
  /** Cells in error on the sheets of the calculation: the bid does not stand. */
  readonly inError?: {
    readonly cells: number;
    /** The cells in which the errors arose, by id. */
    readonly roots: readonly { readonly name: string; readonly error: string }[];
  };
  readonly expired: readonly { readonly code: string; readonly goodUntil: string }[];
  /** Codes without a row in the new office book, and the checks that fail only for that. */
  readonly missing?: { readonly codes: readonly string[]; readonly checks: readonly string[] };
  /** Inputs that the newer template does not have. */
  readonly leftOut?: readonly string[];
  readonly moved?: Moved;
  /** Of a job that is told as built: its cost against what it came to, or why that is not known. */
  readonly built?: AgainstBuilt | { readonly unknown: string };
}

/** The cost of the work of a built job, without overhead and profit: a sum of money, or an error of the calculation. */
export interface AgainstBuilt {
  /** As bid, as it would be bid under the new office book, and as it came. */
  readonly bid: number | string;
  readonly now: number | string;
  readonly made: number | string;
  /** The contingency as bid, and as it would be. */
  readonly kept: number | string;
  readonly keptNow: number | string;
  /** The contingency that would cover an overrun as in one of five own jobs, where the new book learned one. */
  readonly covered?: number;
  /** Is all of the cost told? Else `leftOut` says what counts as planned. */
  readonly toldWhole: boolean;
  readonly leftOut: string;
}

/** Money of a job; an error of the calculation as its code and the cell it came from. */
export interface Figures {
  readonly price: number | string;
  readonly cost: number | string;
  /** By label. */
  readonly sections: Readonly<Record<string, number | string>>;
  readonly from: "workbook" | "own office book" | "new office book";
  readonly book?: { readonly name: string; readonly mark: string };
}

export interface FailingCheck {
  readonly name: string;
  readonly level: "must" | "look";
  readonly message: string;
  readonly before: "passed" | "unknown";
}

/** The change of the price, item by item; `together` is what only their meeting makes. */
export interface Moved {
  readonly from: number;
  readonly to: number;
  readonly items: readonly { readonly item: string; readonly by: number }[];
  readonly together: number;
}

export interface ErrorLine extends OfFile {
  readonly line: "error";
  readonly code: string;
  readonly message: string;
}

/** What lies among jobs and is none. */
export type NoJob = "office book" | "learned rates";

/** A job that the filters leave out, or a file that is no job. */
export interface SkippedLine extends OfFile {
  readonly line: "skipped";
  readonly job: string;
  readonly because?: NoJob;
}

/** The last line of a run that came to its end. */
export interface EndLine {
  readonly line: "end";
  readonly jobs: number;
  readonly errors: number;
  readonly skipped: number;
  /** Jobs that both evaluators calculated and agreed on. */
  readonly judged: number;
}

/** Is the job's result one that totals can take in? */
export const isFigure = (value: number | string): value is number => typeof value === "number";
