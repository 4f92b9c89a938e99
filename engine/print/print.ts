import { mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { basename, dirname, extname, join } from "node:path";
import { RillbookError } from "../errors.js";
import { paperMark } from "../output/kind.js";
import { outputTo } from "../output/write.js";
import { defaultLimits } from "../workbook/read/limits.js";
import { asPdf, officeProgram } from "./office-program.js";
import { onlySheet } from "./only-sheet.js";

/** A page of a bid to be printed: how people ask for it, and its sheet. */
export interface Paper {
  readonly page: string;
  readonly sheet: string;
}

/**
 * Prints pages of a workbook through LibreOffice, each to a PDF file of its own in a folder, named after the
 * workbook and the page. The workbook is only read. Nothing is written where one of them fails.
 * Returns the paths. Throws RillbookError where LibreOffice is missing or fails, and where a file must not be
 * written over.
 */
export async function printPapers(
  workbook: string,
  papers: readonly Paper[],
  into: string = dirname(workbook),
): Promise<string[]> {
  const program = await officeProgram();
  if (program === undefined) {
    throw new RillbookError(
      "printer-missing",
      `Papers are printed by LibreOffice, and no folder of the PATH has its program (soffice). Install it, or open ${workbook} in a spreadsheet and print its pages from there.`,
    );
  }
  const stem = basename(workbook, extname(workbook));
  const targets = papers.map(({ page }) => join(into, `${stem}-${page}.pdf`));
  const outputs = [];
  for (const target of targets) {
    outputs.push(await outputTo(target, { kind: "paper", inputs: [workbook] }));
  }
  const folder = await mkdtemp(join(tmpdir(), "rillbook-print-"));
  try {
    const bytes = new Uint8Array(await readFile(workbook));
    for (const { page, sheet } of papers) {
      await writeFile(join(folder, `${page}.xlsx`), onlySheet(bytes, sheet));
    }
    await asPdf(
      program,
      papers.map(({ page }) => join(folder, `${page}.xlsx`)),
      folder,
    );
    const printed: Uint8Array[] = [];
    for (const { page } of papers) printed.push(await pdfOf(join(folder, `${page}.pdf`), page));
    for (const [i, output] of outputs.entries()) await output.write(printed[i] as Uint8Array);
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
  return targets;
}

/** LibreOffice ends well also where it could not read a file, so each PDF is looked at. */
async function pdfOf(path: string, page: string): Promise<Uint8Array> {
  const bytes = await readFile(path).catch(() => undefined);
  const isPdf = bytes?.subarray(0, 5).toString("latin1") === "%PDF-";
  if (bytes === undefined || !isPdf || bytes.length > defaultLimits.fileBytes) {
    throw new RillbookError(
      "printing-failed",
      `LibreOffice printed nothing for the page "${page}". Nothing was written. Open the workbook there and see whether the page prints.`,
      3,
    );
  }
  // a comment behind the end says whose file it is, so that a later print may take its place
  return Buffer.concat([bytes, Buffer.from(`\n${paperMark} ${page}\n`)]);
}
