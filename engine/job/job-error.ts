import type { ErrorName } from "../error-codes.js";
import { RillbookError } from "../errors.js";

/** A job record that cannot be used; all its faults at once, each naming path, value and rule. */
export class JobError extends RillbookError {
  readonly faults: readonly string[];

  constructor(code: ErrorName, what: string, faults: readonly string[]) {
    super(code, [what, ...faults.map((fault) => `  - ${fault}`)].join("\n"));
    this.name = "JobError";
    this.faults = faults;
  }
}
