import { rename, unlink } from "node:fs/promises";
import { basename, dirname, join, resolve } from "node:path";
import exceljs from "exceljs";
import { mustBeWritable } from "../../files.js";
import type { Results } from "../results.js";
import type { Totals } from "../totals.js";
import { writeJobs } from "./jobs-sheet.js";
import { writeErrors, writeExpired, writeFailing, writeMoved } from "./lists.js";
import { writeSections } from "./sections-sheet.js";
import { writeTotals } from "./summary-sheet.js";

/**
 * Writes the summary of a run as an .xlsx, row by row, so that memory does not grow with the
 * jobs. The old file stays whole until the new one is complete.
 * Throws RillbookError where it cannot be written.
 */
export async function writeSummary(path: string, results: Results, totals: Totals): Promise<void> {
  const target = resolve(path);
  await mustBeWritable(target);
  const temporary = join(dirname(target), `.${basename(target)}.${process.pid}.part`);
  try {
    const book = new exceljs.stream.xlsx.WorkbookWriter({
      filename: temporary,
      useStyles: true,
      useSharedStrings: false,
    });
    writeTotals(book, results, totals);
    await writeJobs(book, results);
    await writeSections(book, results, [...totals.sections.keys()]);
    await writeFailing(book, results);
    await writeExpired(book, results);
    await writeErrors(book, results);
    if (results.runs[0]?.moved) await writeMoved(book, results);
    await book.commit();
    await rename(temporary, target);
  } catch (error) {
    await unlink(temporary).catch(() => undefined);
    throw error;
  }
}
