import type { Results } from "../results.js";
import { beforeOf, inTotals } from "../running-totals.js";
import { jobHeadings } from "./jobs-sheet.js";
import { dollars, type ExcelWriter, type Heading, lettersOf, SheetWriter } from "./sheet-writer.js";

export const before = (label: string) => `${label}, before`;
export const now = (label: string) => `${label}, now`;

export const sectionHeadings = (labels: readonly string[]): Heading[] => [
  { label: "Job", width: 16 },
  { label: "File", width: 36 },
  { label: "In totals", width: 8 },
  ...labels.flatMap((label) => [
    { label: before(label), width: 14, format: dollars },
    { label: now(label), width: 14, format: dollars },
  ]),
];

/** The sections of every job, in the order of the sheet Jobs. */
export async function writeSections(
  book: ExcelWriter,
  results: Results,
  labels: readonly string[],
): Promise<void> {
  const purpose = "The parts of every job, before and now.";
  const sheet = new SheetWriter(book, "Sections", purpose, sectionHeadings(labels));
  for await (const { line, sameAs } of results.jobs()) {
    const old = beforeOf(line);
    const counts = inTotals(line, sameAs);
    sheet.add([
      line.job,
      line.file,
      { formula: `'Jobs'!${lettersOf(jobHeadings, "In totals")}${sheet.next}`, result: counts },
      ...labels.flatMap((label) => [
        old?.sections[label] ?? null,
        line.now.sections[label] ?? null,
      ]),
    ]);
  }
  sheet.end();
}
