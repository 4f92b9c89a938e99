import { existsSync } from "node:fs";
import { mkdir, rm } from "node:fs/promises";
import { basename, extname, join, resolve } from "node:path";
import { runProgram } from "./run-soffice.js";

/**
 * Has Gnumeric load each workbook, recalculate everything unless told not to, and store it as
 * .xlsx in `outDir`. Returns the paths written, in the order given. Throws when an output is missing.
 */
export async function recalculateInGnumeric(
  files: readonly string[],
  outDir: string,
  recalculated = true,
): Promise<string[]> {
  await mkdir(outDir, { recursive: true });
  const written: string[] = [];
  for (const file of files) {
    const from = resolve(file);
    const to = join(resolve(outDir), `${basename(file, extname(file))}.xlsx`);
    if (from === to) throw new Error(`${file} would overwrite itself: give another folder`);
    // an output of an earlier run would hide a failure of this one
    await rm(to, { force: true });
    const options = recalculated ? ["--recalc"] : [];
    const printed = await runProgram("ssconvert", "gnumeric", [...options, from, to]);
    if (!existsSync(to)) throw new Error(`Gnumeric did not write ${to}. It printed: ${printed}`);
    written.push(to);
  }
  return written;
}
