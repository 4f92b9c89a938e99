import { writeWhole } from "../files.js";
import type { JobRecord } from "./record.js";

/** Writes a job record so that a reader finds the old one or the new one, never a piece. */
export async function saveJob(file: string, job: JobRecord): Promise<void> {
  await writeWhole(file, `${JSON.stringify(job, null, 2)}\n`);
}
