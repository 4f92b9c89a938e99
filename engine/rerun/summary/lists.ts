import type { ErrorLine } from "../lines.js";
import type { Results } from "../results.js";
import { dollars, type ExcelWriter, SheetWriter } from "./sheet-writer.js";

const job = { label: "Job", width: 16 };
const file = { label: "File", width: 36 };

/** The checks that fail now and did not before, or of which that is not known. */
export async function writeFailing(book: ExcelWriter, results: Results): Promise<void> {
  const sheet = new SheetWriter(
    book,
    "Checks",
    "Checks that fail now and did not before, or of which that is not known.",
    [
      job,
      file,
      { label: "Check", width: 28 },
      { label: "Level", width: 8 },
      { label: "Before", width: 10 },
      { label: "What to do", width: 80 },
    ],
  );
  for await (const { line } of results.jobs()) {
    for (const { name, level, before, message } of line.failing) {
      sheet.add([line.job, line.file, name, level, before, message]);
    }
  }
  sheet.end();
}

/** The quotes that jobs use and that have expired. */
export async function writeExpired(book: ExcelWriter, results: Results): Promise<void> {
  const day = results.runs[0]?.asOf ?? "";
  const purpose = `Quotes in use whose last day is before ${day}: ask again.`;
  const sheet = new SheetWriter(book, "Quotes", purpose, [
    job,
    file,
    { label: "Item", width: 24 },
    { label: "Good until", width: 14 },
  ]);
  for await (const { line } of results.jobs()) {
    for (const { code, goodUntil } of line.expired) {
      sheet.add([line.job, line.file, code, goodUntil]);
    }
  }
  sheet.end();
}

/** The files that gave no result. */
export async function writeErrors(book: ExcelWriter, results: Results): Promise<void> {
  const sheet = new SheetWriter(book, "Not read", "Files that gave no result, and why.", [
    { ...file, width: 50 },
    { label: "Code", width: 22 },
    { label: "Why", width: 100 },
  ]);
  for await (const { line } of results.each("error")) {
    const { file: path, code, message } = line as ErrorLine;
    sheet.add([path, code, message]);
  }
  sheet.end();
}

export const movedHeadings = [
  { label: "Item", width: 30 },
  job,
  file,
  { label: "Moves the price by", width: 16, format: dollars },
];

/** What moved the price of each job that counts. */
export async function writeMoved(book: ExcelWriter, results: Results): Promise<void> {
  const purpose =
    "Each changed price put in alone, the others as they were; “together” is what only several of them make.";
  const sheet = new SheetWriter(book, "Moved", purpose, movedHeadings);
  for await (const { line, sameAs } of results.jobs()) {
    if (line.moved === undefined || sameAs !== undefined) continue;
    for (const { item, by } of line.moved.items) sheet.add([item, line.job, line.file, by]);
    sheet.add([together, line.job, line.file, line.moved.together]);
  }
  sheet.end();
}

export const together = "together";
