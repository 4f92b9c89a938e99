import { readdirSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { identityOf } from "../../engine/book/identity-of.js";
import { type LoadedJob, loadJob } from "../../engine/book/load-job.js";
import { calculate } from "../../engine/evaluate/calculate.js";
import type { Value } from "../../engine/formula/value.js";
import { writeWorkbook } from "../../engine/workbook/write/write.js";
import { templates } from "../../sheets/templates/index.js";

export const demoFolder = fileURLToPath(new URL("../../sheets/demo/", import.meta.url));

/** The paths of the demo job records. */
export function demoJobs(): string[] {
  return readdirSync(demoFolder)
    .filter((name) => name.endsWith(".json") && !name.startsWith("office-book"))
    .map((name) => join(demoFolder, name));
}

export interface DemoBid extends LoadedJob {
  readonly values: readonly Value[];
  readonly bytes: Uint8Array;
}

const made = new Map<string, Promise<DemoBid>>();

/**
 * A job record calculated by both evaluators and written as a workbook, in memory; made once a process.
 * The bytes are those of all who ask: change a copy.
 */
export function bidOf(file: string): Promise<DemoBid> {
  const known = made.get(file) ?? makeBid(file);
  made.set(file, known);
  return known;
}

async function makeBid(file: string): Promise<DemoBid> {
  const loaded = await loadJob(file, templates);
  const values = calculate(loaded.model, loaded.given);
  const bytes = await writeWorkbook(loaded.model, values, identityOf(loaded));
  return { ...loaded, values, bytes };
}
