import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { onTestFinished } from "vitest";
import type { OfficeBook } from "../../../engine/book/office-book.js";
import type { JobRecord } from "../../../engine/job/record.js";
import type { RerunOptions } from "../../../engine/rerun/rerun.js";
import type { Trade } from "../../../engine/rerun/trade.js";
import { fenceBook, fenceJob } from "../../support/fence.js";
import { templates } from "./templates.js";

export { fenceFour, fenceThree } from "./templates.js";

/** Next year's prices: posts cost more, and the quote for paint has ended. */
export const nextBook: OfficeBook = {
  ...fenceBook,
  name: "next year",
  asOf: "2027-01-04",
  mark: "c".repeat(64),
  tables: {
    items: (fenceBook.tables.items ?? []).map((row) => ({
      ...row,
      ...(row.code === "post" ? { unit_price: 25 } : {}),
      ...(row.code === "paint" ? { good_until: "2026-02-01" } : {}),
    })),
  },
};

/** Next year's prices without boards. */
export const lackingBook: OfficeBook = {
  ...nextBook,
  mark: "d".repeat(64),
  tables: { items: (nextBook.tables.items ?? []).filter(({ code }) => code !== "board") },
};

const books: Record<string, OfficeBook> = {
  "old-book": fenceBook,
  "next-book": nextBook,
  "lacking-book": lackingBook,
};

/** The trade of the tests; its office books are told apart by the ends of their paths. */
export const fenceTrade: Trade = {
  templates,
  readBook: async (path) => {
    const found = Object.entries(books).find(([name]) => path.endsWith(name));
    if (found === undefined) throw new Error(`no book ${path}`);
    return found[1];
  },
};

export const options = (
  named: readonly string[],
  more: Partial<RerunOptions> = {},
): RerunOptions => ({
  named,
  office: "next-book",
  versions: "own",
  asOf: "2026-06-01",
  filters: [],
  sample: 0,
  resume: false,
  moved: false,
  workers: 0,
  ...more,
});

/** An empty folder that goes away with the test. */
export async function folder(): Promise<string> {
  const path = await mkdtemp(join(tmpdir(), "rillbook-test-"));
  onTestFinished(() => rm(path, { recursive: true, force: true }));
  return path;
}

/** Writes a job record named after its number. */
export async function writeJob(
  into: string,
  job: string,
  more: Partial<JobRecord> = {},
): Promise<string> {
  const path = join(into, `${job}.json`);
  const record = { ...fenceJob, job, office: "old-book", ...more };
  await writeFile(path, JSON.stringify(record));
  return path;
}
