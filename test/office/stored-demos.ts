import { mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { basename, join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { auditWorkbook } from "../../engine/audit/audit.js";
import { recalculated } from "../../engine/audit/recalculate.js";
import { sealedContent } from "../../engine/audit/sealed-content.js";
import { newKeyPair, sealed, secretKey, sectionsOf, withSeal } from "../../engine/seal/index.js";
import { matchWorkbook } from "../../engine/workbook/match/match.js";
import { toldIdentity } from "../../engine/workbook/match/told-identity.js";
import { readPictures } from "../../engine/workbook/pictures/read.js";
import type { WorkbookContent } from "../../engine/workbook/read/content.js";
import { readWorkbook } from "../../engine/workbook/read/read.js";
import { templates } from "../../sheets/templates/index.js";
import { drawnAreas, drawnCharts } from "../support/chart-parts.js";
import { bidOf, type DemoBid, demoJobs } from "../support/demo.js";
import { plantWrongValues } from "../support/plant.js";
import { compared } from "./differences.js";

const pair = newKeyPair();
const key = secretKey(pair.secret, "key");
const sealedAt = "2030-01-02T03:04:05.006Z";

/** A bid as an office seals it; `content` is what is read of it. */
function sealedBid({ bytes, model }: DemoBid, content: WorkbookContent, path: string): Uint8Array {
  const subject = { content, model, match: matchWorkbook(content, model) };
  const { identity } = toldIdentity(content);
  const values = recalculated(subject, new Set());
  const sections = sectionsOf(model, sealedContent(subject, identity, values));
  return withSeal(bytes, sealed(sections, sealedAt, key), path);
}

/**
 * Has a program store each demo bid, sealed and with every cached value wrong: it finds our values again, and what
 * it changes by storing a bid that nobody edited is no finding, breaks no seal and loses no chart; the largest demo
 * is stored three times. One call of the program for all, since loading takes longest.
 *
 * @param save stores workbooks, recalculated, in a folder, and gives their paths
 * @param only the names of the demos to store, where not all are
 */
export function testStored(
  program: string,
  save: (files: readonly string[], folder: string) => Promise<string[]>,
  only?: readonly string[],
): void {
  const jobs = demoJobs()
    .map((job): [string, string] => [basename(job, ".json"), job])
    .filter(([name]) => only?.includes(name) ?? true);
  let folder: string;
  /** What the program stored, by the name of the demo. */
  const stored = new Map<string, Uint8Array>();
  const pathOf = (name: string, time: number) => join(folder, String(time), `${name}.xlsx`);
  /** What is read of a bid as we wrote it, and of the same as the program stored it: once for all that ask. */
  const written = new Map<string, WorkbookContent>();
  const read = new Map<string, WorkbookContent>();
  const bytesAt = async (path: string) => new Uint8Array(await readFile(path));

  beforeAll(async () => {
    folder = await mkdtemp(join(tmpdir(), "rillbook-stored-"));
    // all of them before anything else: a file that begins meanwhile would make those it needs as well
    for (const [, job] of jobs) await bidOf(job);
    const made: string[] = [];
    for (const [name, job] of jobs) {
      const bid = await bidOf(job);
      const path = join(folder, `${name}.xlsx`);
      const content = readWorkbook(bid.bytes);
      written.set(name, content);
      const { bytes, planted } = plantWrongValues(sealedBid(bid, content, path));
      expect(planted).toBeGreaterThanOrEqual(bid.model.order.length);
      await writeFile(path, bytes);
      made.push(path);
    }
    await save(made, join(folder, "1"));
    for (const [name] of jobs) {
      const bytes = await bytesAt(pathOf(name, 1));
      stored.set(name, bytes);
      read.set(name, readWorkbook(bytes, { look: true }));
    }
  }, 400_000);
  afterAll(() => rm(folder, { recursive: true, force: true }));

  async function holdsAsOurs(content: WorkbookContent, bid: DemoBid): Promise<void> {
    const audit = await auditWorkbook(content, templates, {
      book: bid.book,
      key: pair.fingerprint,
    });
    expect(audit.seal).toEqual({ state: "whole", time: sealedAt, key: pair.fingerprint });
    expect(audit.findings.filter(({ grade }) => grade !== "to know")).toEqual([]);
  }

  test.each(jobs)("%s: every planted value comes back as ours", (name) => {
    const ours = written.get(name) as WorkbookContent;
    const theirs = read.get(name) as WorkbookContent;
    const { compared: count, differences } = compared(ours, theirs);
    console.log(`${name}: ${count} formula cells compared with ${program}`);
    expect(differences.slice(0, 20)).toEqual([]);
    expect(count).toBeGreaterThan(1000);
  });

  test.each(jobs)("%s: an audit finds nothing, and the seal is whole", async (name, job) => {
    await holdsAsOurs(read.get(name) as WorkbookContent, await bidOf(job));
  });

  test("the largest demo stored twice more: the same", async () => {
    const largest = "hillside-stream";
    const job = jobs.find(([name]) => name === largest)?.[1] as string;
    for (const time of [2, 3]) await save([pathOf(largest, time - 1)], join(folder, `${time}`));
    const content = readWorkbook(await bytesAt(pathOf(largest, 3)), { look: true });
    await holdsAsOurs(content, await bidOf(job));
  }, 200_000);

  test.each(jobs)("%s: every chart is there, its series and their cells", async (name, job) => {
    const [{ bytes }, after] = [await bidOf(job), stored.get(name) as Uint8Array];
    expect(drawnCharts(after)).toEqual(drawnCharts(bytes));
    expect(drawnAreas(after)).toEqual(drawnAreas(bytes));
    expect(drawnCharts(bytes).length).toBeGreaterThan(3);
  });

  test.each(jobs)("%s: it holds nothing that a new bid could not carry", (name) => {
    expect(readPictures(stored.get(name) as Uint8Array)).toEqual({ pictures: [], left: [] });
  });
}
