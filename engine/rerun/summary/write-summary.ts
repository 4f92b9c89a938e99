import { createWriteStream, type WriteStream } from "node:fs";
import { createRequire } from "node:module";
import { finished } from "node:stream/promises";
import type exceljs from "exceljs";
import { summaryCreator } from "../../output/kind.js";
import type { Output } from "../../output/write.js";
import type { Results } from "../results.js";
import type { Totals } from "../running-totals.js";
import { writeBuilt } from "./built-sheet.js";
import { writeJobs } from "./jobs-sheet.js";
import { writeErrors, writeExpired, writeFailing, writeMoved } from "./lists.js";
import { writeSections } from "./sections-sheet.js";
import { writeTotals } from "./summary-sheet.js";

type Writer = typeof exceljs.stream.xlsx.WorkbookWriter;

/** Of the library its writer alone: with all that it reads, it takes more than twice as long to load. */
const WorkbookWriter = createRequire(import.meta.url)(
  "exceljs/lib/stream/xlsx/workbook-writer.js",
) as Writer;

/** The same for created and modified: another program's save tells itself by that. */
const undated = new Date(Date.UTC(2000, 0, 1));

/**
 * Writes the summary of a run as an .xlsx, row by row, so that memory does not grow with the
 * jobs. The old file stays whole until the new one is complete.
 * Throws RillbookError where it cannot be written.
 */
export function writeSummary(output: Output, results: Results, totals: Totals): Promise<void> {
  return output.writeWith(async (part) => {
    const stream = createWriteStream(part, { flags: "wx" });
    // a full disk ends the stream, which the rows that follow would wait for
    const broken = finished(stream);
    await Promise.race([broken, rowsInto(stream, results, totals)]);
    await broken;
  });
}

async function rowsInto(stream: WriteStream, results: Results, totals: Totals): Promise<void> {
  const options = { stream, useStyles: true, useSharedStrings: false };
  const book = new WorkbookWriter(
    options as Partial<exceljs.stream.xlsx.WorkbookStreamWriterOptions>,
  );
  Object.assign(book, { creator: summaryCreator, created: undated, modified: undated });
  writeTotals(book, results, totals);
  await writeJobs(book, results);
  await writeSections(book, results, [...totals.sections.keys()]);
  if (totals.built.rows > 0) await writeBuilt(book, results);
  await writeFailing(book, results);
  await writeExpired(book, results);
  await writeErrors(book, results);
  if (results.runs[0]?.moved) await writeMoved(book, results);
  await book.commit();
}
