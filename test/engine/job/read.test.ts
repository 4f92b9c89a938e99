import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { RillbookError } from "../../../engine/errors.js";
import { readJob } from "../../../engine/job/read.js";
import { toy, toyJob } from "../../support/toy.js";

let folder: string;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "rillbook-read-"));
});
afterAll(() => rm(folder, { recursive: true }));

const older = { ...toy, version: 2 };
const faulty: [what: string, text: string, code: string, sentence: RegExp][] = [
  [
    "broken JSON",
    '{"rillbook": 1,',
    "json-broken",
    /a\.json is not valid JSON: .*\. Correct it there\.$/,
  ],
  ["nothing", "", "json-broken", /a\.json is not valid JSON/],
  ["a list", "[1]", "job-invalid", /a\.json is not a job record: it must be one JSON object/],
  ["null", "null", "job-invalid", /is not a job record/],
  ["none of ours", '{"a": 1}', "job-invalid", /is JSON, but not a job record: it names neither/],
  ["no template", '{"rillbook": 1}', "template-unknown", /a\.json names no template\. There are/],
  [
    "an unknown template",
    JSON.stringify({ ...toyJob, template: "toyy" }),
    "template-unknown",
    /names the template "toyy", which is not known\. Did you mean "toy"\? There are: toy\./,
  ],
  [
    "another version",
    JSON.stringify({ ...toyJob, version: 9 }),
    "template-version",
    /was made for version 9 of the template toy; this program has version 3, 2\. Use a program/,
  ],
  [
    "a version in quotes",
    JSON.stringify({ ...toyJob, version: "3" }),
    "template-version",
    /was made for version "3" of the template toy/,
  ],
  [
    "unknown units",
    JSON.stringify({ ...toyJob, units: "metric" }),
    "units-unknown",
    /units is "metric", but must be "us" or "si"/,
  ],
];

describe("readJob", () => {
  it("finds the template by name and version", async () => {
    const file = join(folder, "job.json");
    for (const template of [toy, older]) {
      await writeFile(file, JSON.stringify({ ...toyJob, version: template.version }));
      const raw = await readJob(file, [toy, older]);
      expect(raw.template).toBe(template);
      expect(raw.units).toBe("us");
    }
  });

  it("takes a byte order mark, as some editors write it", async () => {
    const file = join(folder, "mark.json");
    await writeFile(file, `\uFEFF${JSON.stringify(toyJob)}`);
    expect((await readJob(file, [toy])).template).toBe(toy);
  });

  it.each(faulty)("refuses %s", async (_, text, code, sentence) => {
    const file = join(folder, "a.json");
    await writeFile(file, text);
    const error = await readJob(file, [toy, older]).catch((caught) => caught);
    expect(error).toBeInstanceOf(RillbookError);
    expect(error.message).toMatch(sentence);
    expect([error.code, error.exitStatus]).toEqual([code, 2]);
  });

  it("refuses a file that is missing, and a folder", async () => {
    await expect(readJob(join(folder, "none.json"), [toy])).rejects.toThrow(
      /The job record .*none\.json does not exist\. Check the name\./,
    );
    await expect(readJob(folder, [toy])).rejects.toThrow(/is a folder, not a file/);
  });
});
