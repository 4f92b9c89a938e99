import { mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { basename, join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { auditWorkbook } from "../../engine/audit/audit.js";
import type { OfficeBook } from "../../engine/book/office-book.js";
import { readWorkbook } from "../../engine/workbook/read/read.js";
import { templates } from "../../sheets/templates/index.js";
import { bidOf, demoJobs } from "../support/demo.js";
import { recalculateInGnumeric } from "./gnumeric.js";
import { recalculate } from "./soffice.js";

// What a program changes by storing a bid that nobody edited is no finding, after three saves neither.

let folder: string;
const made: string[] = [];
let book: OfficeBook;

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "rillbook-unchanged-"));
  for (const job of demoJobs()) {
    const bid = await bidOf(job);
    book = bid.book;
    const path = join(folder, `${basename(job, ".json")}.xlsx`);
    await writeFile(path, bid.bytes);
    made.push(path);
  }
});
afterAll(() => rm(folder, { recursive: true, force: true }));

const programs = [
  ["LibreOffice", recalculate],
  ["Gnumeric", recalculateInGnumeric],
] as const;

test.each(programs)(
  "%s saves each demo bid, the largest three times, unchanged: clean",
  {
    timeout: 300_000,
  },
  async (program, save) => {
    let files: readonly string[] = made;
    for (const time of [1, 2, 3]) {
      files = await save(files, join(folder, `${program}-${time}`));
      // the largest demo goes on alone: an audit takes seconds, and is for the first and last save
      if (time > 1) files = files.filter((file) => file.includes("hillside"));
      if (time === 2) continue;
      for (const file of files) {
        const content = readWorkbook(new Uint8Array(await readFile(file)), { look: true });
        const { findings } = await auditWorkbook(content, templates, book);
        expect(
          findings.filter(({ grade }) => grade !== "to know"),
          `${file}, save ${time}`,
        ).toEqual([]);
      }
    }
  },
);
