import { RillbookError } from "../../errors.js";

/** Why a workbook was refused; stable, for programs. */
export type RefusalCode =
  | "workbook-file" // missing, unreadable, not a file
  | "workbook-kind" // not an .xlsx workbook at all
  | "workbook-encrypted"
  | "workbook-size" // over a limit
  | "workbook-damaged" // breaks the file format
  | "workbook-unsafe" // a construct that no spreadsheet program writes
  | "workbook-cell" // a cell that cannot be read with certainty
  | "workbook-name"; // a defined name that is missing or has the wrong shape

/** A workbook that cannot be read safely. The message names the thing, the value, the rule and what to do. */
export class WorkbookRefused extends RillbookError {
  constructor(code: RefusalCode, sentence: string) {
    super(code, sentence, 2);
    this.name = "WorkbookRefused";
  }
}

/** The refusal of a part that breaks the format, with the one advice that helps. */
export function damaged(what: string): WorkbookRefused {
  return new WorkbookRefused(
    "workbook-damaged",
    `${what}. The file is damaged or was not written by a spreadsheet program: open it in one, save it as .xlsx and try again.`,
  );
}
