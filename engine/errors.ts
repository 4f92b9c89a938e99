import type { ErrorName } from "./error-codes.js";

/**
 * Every error a user can meet: a stable code for programs, a sentence for people
 * (the thing, the value, the rule, what to do) and the exit status of the command.
 */
export class RillbookError extends Error {
  /** One of `errorCodes`. */
  readonly code: ErrorName;
  readonly exitStatus: number;

  constructor(code: ErrorName, sentence: string, exitStatus = 2) {
    super(sentence);
    this.name = "RillbookError";
    this.code = code;
    this.exitStatus = exitStatus;
  }
}
