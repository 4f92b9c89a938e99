import { mkdir, writeFile } from "node:fs/promises";
import { join } from "node:path";
import type { OfficeBook } from "../../engine/book/office-book.js";
import { valuesOf } from "../../engine/book/values.js";
import { calculateFast } from "../../engine/evaluate/calculate.js";
import type { JobRecord } from "../../engine/job/record.js";
import type { Model } from "../../engine/template/model.js";
import { writeWorkbook } from "../../engine/workbook/write/write.js";
import { randomJob } from "../support/random-job.js";

/** Invented jobs, each another; more than these repeat under other numbers. */
const different = 500;

/** Writes so many job records, each in the folder of its hundred. */
export async function makeRecords(
  folder: string,
  model: Model,
  book: OfficeBook,
  prices: string,
  count: number,
): Promise<void> {
  const jobs: JobRecord[] = [];
  for (let i = 0; i < count; i++) {
    const into = join(folder, String(Math.floor(i / 100)));
    if (i % 100 === 0) await mkdir(into, { recursive: true });
    if (i < different) jobs.push(randomJob(model, book, i));
    const record = { ...jobs[i % different], job: `B-${i}`, prices };
    await writeFile(join(into, `B-${i}.json`), JSON.stringify(record));
  }
}

/** Writes so many bids as workbooks; returns their paths. */
export async function makeWorkbooks(
  folder: string,
  model: Model,
  book: OfficeBook,
  count: number,
): Promise<string[]> {
  await mkdir(folder, { recursive: true });
  const paths: string[] = [];
  for (let i = 0; i < count; i++) {
    const job = randomJob(model, book, i);
    const values = calculateFast(model, valuesOf(model, job, book));
    const bytes = await writeWorkbook(model, values, {
      job: `B-${i}`,
      template: job.template,
      version: job.version,
      units: model.system,
      book: book.name,
      bookAsOf: book.asOf,
      bookMark: book.mark,
    });
    paths.push(join(folder, `B-${i}.xlsx`));
    await writeFile(paths.at(-1) as string, bytes);
  }
  return paths;
}

/** The book with every cost a few per cent up. */
export function dearer(book: OfficeBook): object {
  const { mark: _, ...rest } = book;
  const tables = Object.fromEntries(
    Object.entries(book.tables).map(([name, rows]) => [
      name,
      rows.map((row) =>
        typeof row.cost === "number" ? { ...row, cost: Math.round(row.cost * 104) / 100 } : row,
      ),
    ]),
  );
  return { ...rest, name: `${book.name}, next year`, tables };
}
