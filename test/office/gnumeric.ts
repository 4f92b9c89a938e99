import { existsSync } from "node:fs";
import { mkdir, rm } from "node:fs/promises";
import { basename, extname, join, resolve } from "node:path";
import { strFromU8, strToU8, unzipSync, zipSync } from "fflate";
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

/** Stands for a number that is too large for a double. */
export const beyondDouble = 1e308;

/**
 * Gnumeric calculates with 80 bits where the processor has them, and stores numbers that no other
 * program can read: they become `beyondDouble` here.
 */
export function readableNumbers(workbook: Uint8Array): Uint8Array {
  const parts = unzipSync(workbook);
  for (const [name, part] of Object.entries(parts)) {
    if (!/^xl\/worksheets\/sheet\d+\.xml$/.test(name)) continue;
    const xml = strFromU8(part).replace(/<v>([\d.]+e\+\d+)<\/v>/gi, (whole, number: string) =>
      Number.isFinite(Number(number)) ? whole : `<v>${beyondDouble}</v>`,
    );
    parts[name] = strToU8(xml);
  }
  return zipSync(parts, { level: 0 });
}
