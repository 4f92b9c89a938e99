import { readFile, writeFile } from "node:fs/promises";
import { join } from "node:path";
import type { InputValues, JobRecord } from "../../../engine/job/record.js";
import { demoFolder } from "../../support/demo.js";

/** What became of a demo job, as an office would have typed it on sheet Built. Invented. */
export interface Became {
  readonly job: string;
  readonly file: string;
  readonly demo?: string;
  readonly inputs?: InputValues;
}

export const office = join(demoFolder, "office-book.json");

/** Rows of the tasks by their place in the list of tasks. */
export const tasksTaken = (taken: Readonly<Record<number, object>>) => {
  const last = Math.max(...Object.keys(taken).map(Number));
  return Array.from({ length: last }, (_, i) => taken[i + 1] ?? {}) as InputValues[string];
};

export const builtOn = (day: string, taken: Readonly<Record<number, object>>): InputValues => ({
  job_state: "built",
  work_ended: day,
  built_tasks: tasksTaken(taken),
});

/** Writes a demo job under another number into a folder. */
export async function writeBecame(folder: string, became: Became): Promise<string> {
  const { job, file, demo = "garden-corner", inputs = {} } = became;
  const text = await readFile(join(demoFolder, `${demo}.json`), "utf8");
  const { trail: _, ranges: __, ...record } = JSON.parse(text) as JobRecord;
  const path = join(folder, file);
  const book = join(demoFolder, record.office ?? "");
  const made = { ...record, job, office: book, inputs: { ...record.inputs, ...inputs } };
  await writeFile(path, JSON.stringify(made));
  return path;
}
