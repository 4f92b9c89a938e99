import { readdirSync } from "node:fs";
import { basename, dirname, join, resolve } from "node:path";
import { fileURLToPath } from "node:url";
import { identityOf } from "../../engine/book/identity-of.js";
import { type LoadedJob, loadJob } from "../../engine/book/load-job.js";
import { mustAgree } from "../../engine/evaluate/agree.js";
import { calculateFast } from "../../engine/evaluate/calculate.js";
import { judge } from "../../engine/evaluate/judge.js";
import type { Value } from "../../engine/formula/value.js";
import { writeWorkbook } from "../../engine/workbook/write/write.js";
import { templates } from "../../sheets/templates/index.js";
import { keptBid } from "./kept-bid.js";

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
 * A job record calculated by both evaluators and written as a workbook, in memory; made once a process, a demo once
 * for all processes. The bytes are those of all who ask: change a copy.
 */
export function bidOf(file: string): Promise<DemoBid> {
  const known = made.get(file) ?? makeBid(file);
  made.set(file, known);
  return known;
}

async function makeBid(file: string): Promise<DemoBid> {
  const loaded = await loadJob(file, templates);
  const make = async () => {
    const values = calculateFast(loaded.model, loaded.given);
    // demos are held against whole sheets of the judge, and not against its answers to questions alone
    mustAgree(loaded.model, judge(loaded.model, loaded.given), values);
    return writeWorkbook(loaded.model, values, identityOf(loaded));
  };
  const isDemo = dirname(resolve(file)) === resolve(demoFolder);
  const bytes = isDemo ? await keptBid(basename(file, ".json"), make) : await make();
  return { ...loaded, values: calculateFast(loaded.model, loaded.given), bytes };
}
