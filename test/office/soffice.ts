import { existsSync } from "node:fs";
import { copyFile, mkdir, mkdtemp, readdir, readFile, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { basename, extname, join, resolve } from "node:path";
import { runProgram, runSoffice } from "./run-soffice.js";
import { macroFiles, macroOf, type Step } from "./steps.js";

/** A new value for the cell behind a defined name, or behind `name[3]`, the third cell of a column. */
export interface CellEdit {
  readonly name: string;
  readonly value: number | string;
}

/**
 * Has LibreOffice load each workbook, recalculate everything, and store it as .xlsx in `outDir`.
 * One start for all files. Returns the paths written, in the order given.
 * Throws when file names repeat, a file would overwrite itself, or an output is missing.
 */
export function recalculate(files: readonly string[], outDir: string): Promise<string[]> {
  return convert(files, outDir, "xlsx");
}

/** As `recalculate`, but prints each workbook to a .pdf. */
export function toPdf(files: readonly string[], outDir: string): Promise<string[]> {
  return convert(files, outDir, "pdf");
}

/** Draws each page of a .pdf as a .png in `outDir`, at `dotsPerInch`. Returns the paths, page by page. */
export async function pdfToPng(pdf: string, outDir: string, dotsPerInch = 80): Promise<string[]> {
  await mkdir(outDir, { recursive: true });
  const stem = basename(pdf, ".pdf");
  const args = ["-png", "-r", String(dotsPerInch), pdf, join(outDir, stem)];
  await runProgram("pdftoppm", "poppler-utils", args);
  const pages = (await readdir(outDir)).filter(
    (f) => f.startsWith(`${stem}-`) && /-\d+\.png$/.test(f),
  );
  if (pages.length === 0) throw new Error(`${pdf}: no page was drawn; open it by hand to see why`);
  return pages.sort().map((page) => join(outDir, page));
}

/**
 * Types new values into a workbook as an office would, recalculates hard, and stores the result as .xlsx.
 * Throws when a name does not exist, stands for several cells, or the cell did not take the value.
 */
export function editCells(
  file: string,
  edits: readonly CellEdit[],
  outFile: string,
): Promise<void> {
  return takeSteps(
    file,
    edits.map((edit) => ({ kind: "set", ...edit })),
    outFile,
  );
}

/** Inserts an empty row so that it becomes row `rowIndex` (from 1) of the sheet; unprotects the sheet. */
export function insertRow(
  file: string,
  sheetName: string,
  rowIndex: number,
  outFile: string,
): Promise<void> {
  return takeSteps(file, [{ kind: "insert-row", sheet: sheetName, row: rowIndex }], outFile);
}

/** Takes any list of steps, in one start of LibreOffice, under a locale such as `de-DE` where one is given. */
export async function takeSteps(
  file: string,
  steps: readonly Step[],
  outFile: string,
  locale = "",
  limitSeconds = 100,
): Promise<void> {
  const [from, to] = [resolve(file), resolve(outFile)];
  if (!existsSync(from)) throw new Error(`${file} does not exist: give a workbook to edit`);
  if (from === to) throw new Error(`${file} would overwrite itself: give another output file`);
  await rm(to, { force: true });
  const scratch = await mkdtemp(join(tmpdir(), "rillbook-steps-"));
  try {
    const report = join(scratch, "report.txt");
    // A copy: LibreOffice locks what it edits, and a failed run would leave the lock behind.
    const copy = join(scratch, basename(from));
    await copyFile(from, copy);
    const source = macroOf(steps, { from: copy, to, report });
    const files = macroFiles(source);
    const call = ["macro:///Standard.Steps.Run"];
    const printed = await runSoffice(call, files, locale, limitSeconds);
    const said = existsSync(report) ? (await readFile(report, "utf8")).trim() : "no report";
    if (said !== "done" || !existsSync(to)) {
      throw new Error(`${file}: LibreOffice did not take the steps: ${said}. ${printed}`.trim());
    }
  } finally {
    await rm(scratch, { recursive: true, force: true });
  }
}

async function convert(
  files: readonly string[],
  outDir: string,
  kind: "xlsx" | "pdf",
): Promise<string[]> {
  const inputs = files.map((file) => resolve(file));
  const outputs = inputs.map((file) =>
    join(resolve(outDir), `${basename(file, extname(file))}.${kind}`),
  );
  const repeated = outputs.find((output, i) => outputs.indexOf(output) !== i);
  if (repeated) {
    throw new Error(`${basename(repeated)} would be written twice: give each input its own name`);
  }
  for (const [i, input] of inputs.entries()) {
    if (!existsSync(input)) throw new Error(`${input} does not exist: give a workbook to convert`);
    if (input === outputs[i])
      throw new Error(`${input} would overwrite itself: give another folder`);
  }
  await mkdir(outDir, { recursive: true });
  // An output of an earlier run would hide a failure of this one.
  for (const output of outputs) await rm(output, { force: true });
  if (inputs.length === 0) return [];
  const args = ["--convert-to", kind, "--outdir", resolve(outDir), ...inputs];
  const printed = await runSoffice(args, {}, "", 100 + 20 * inputs.length);
  const missing = outputs.filter((output) => !existsSync(output));
  if (missing.length > 0) {
    throw new Error(`LibreOffice did not write ${missing.join(", ")}. It printed: ${printed}`);
  }
  return outputs;
}
