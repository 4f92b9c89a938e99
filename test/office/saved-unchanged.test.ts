import { mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { basename, join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { auditWorkbook } from "../../engine/audit/audit.js";
import type { OfficeBook } from "../../engine/book/office-book.js";
import { newKeyPair, sealed, secretKey, withSeal } from "../../engine/seal/index.js";
import { readWorkbook } from "../../engine/workbook/read/read.js";
import { templates } from "../../sheets/templates/index.js";
import { bidOf, demoJobs } from "../support/demo.js";
import { recalculateInGnumeric } from "./gnumeric.js";
import { recalculate } from "./soffice.js";

// What a program changes by storing a bid that nobody edited is no finding, after three saves neither, and
// breaks no seal.

let folder: string;
const made: string[] = [];
/** The office book of each bid, by the name of its file. */
const books = new Map<string, OfficeBook>();
const pair = newKeyPair();
const key = secretKey(pair.secret, "key");
const sealedAt = "2030-01-02T03:04:05.006Z";

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "rillbook-unchanged-"));
  for (const job of demoJobs()) {
    const bid = await bidOf(job);
    const path = join(folder, `${basename(job, ".json")}.xlsx`);
    books.set(basename(path), bid.book);
    const { sections } = await auditWorkbook(readWorkbook(bid.bytes), templates);
    if (sections === undefined) throw new Error(`The template of ${path} is not known.`);
    await writeFile(path, withSeal(bid.bytes, sealed(sections, sealedAt, key), path));
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
        const book = books.get(basename(file));
        const { findings, seal } = await auditWorkbook(content, templates, book, pair.fingerprint);
        expect(seal, `${file}, save ${time}`).toEqual({
          state: "whole",
          time: sealedAt,
          key: pair.fingerprint,
        });
        expect(
          findings.filter(({ grade }) => grade !== "to know"),
          `${file}, save ${time}`,
        ).toEqual([]);
      }
    }
  },
);
