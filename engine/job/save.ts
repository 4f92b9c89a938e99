import type { JobRecord } from "./record.js";

/** A job record as it stands in its file. */
export const recordText = (job: JobRecord): string => `${JSON.stringify(job, null, 2)}\n`;
