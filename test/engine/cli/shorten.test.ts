import { mkdir, mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, expect, test } from "vitest";
import type { JobRecord } from "../../../engine/job/record.js";
import { appended } from "../../../engine/job/trail/chain.js";
import { fenceBook, fenceJob } from "../../support/fence.js";
import { fenceTrail } from "../../support/fence-bid.js";
import { spoken } from "../../support/spoken.js";
import { fenceThree } from "../rerun/templates.js";

let folder: string;
const at = (name: string) => join(folder, name);
const rillbook = (...args: string[]) => spoken(args, [fenceThree]);

/** Many walks, each with another height, and the one that the job has. */
const walks = Array.from({ length: 4000 }, (_, i) => ({
  time: "2026-05-05T09:00:00.000Z",
  by: "Estimator A",
  input: "height",
  old: i === 0 ? 5.5 : i,
  new: i === 3999 ? 5.5 : i + 1,
  unit: "ft",
  from: "measured on site" as const,
}));
const long = { ...fenceJob, office: "book.json", trail: appended(fenceTrail, walks) };

beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), "rillbook-shorten-"));
  const { mark: _, ...book } = fenceBook;
  await writeFile(at("book.json"), JSON.stringify(book));
  await writeFile(at("job.json"), JSON.stringify(long));
});
afterEach(() => rm(folder, { recursive: true }));

test("a record that no workbook could carry is refused with what to do; shortened, its bid is clean and comes back", async () => {
  const bid = ["-o", at("bid.xlsx")];
  const refused = await rillbook("bid", at("job.json"), ...bid);
  expect(refused.status).toBe(2);
  expect(refused.err).toMatch(/^trail-too-long: .*4011 entries.*rillbook shorten/);

  const told = await rillbook("shorten", at("job.json"), "-o", at("short.json"));
  expect(told).toMatchObject({
    status: 0,
    out: `Written: ${at("short.json")}, with 11 of 4011 entries\n`,
  });
  expect(JSON.parse(await readFile(at("job.json"), "utf8"))).toEqual(long);

  const made = await rillbook("bid", at("short.json"), ...bid);
  expect([made.err, made.status]).toEqual(["", 0]);
  expect((await rillbook("audit", at("bid.xlsx"))).out).toMatch(/^CLEAN/);
  const taken = await rillbook("take", at("bid.xlsx"), "-o", at("short.json"));
  expect(taken.out).toContain("no input was changed");
});

test("in another folder it names its office book from there", async () => {
  await mkdir(at("old"));
  await rillbook("shorten", at("job.json"), "-o", at("old/short.json"));
  const { office } = JSON.parse(await readFile(at("old/short.json"), "utf8")) as JobRecord;
  expect(office).toBe("../book.json");
});

test.each([
  ["over itself", () => at("job.json"), /^file-exists: /],
  ["under a name that says something else", () => at("short.xlsx"), /^output-kind: /],
])("nothing is written %s", async (_, to, words) => {
  const { status, err } = await rillbook("shorten", at("job.json"), "-o", to());
  expect([status, err]).toEqual([2, expect.stringMatching(words)]);
});

test("a trail that was tampered with is not shortened, which would cover that up", async () => {
  const trail = long.trail.map((entry, i) => (i === 2 ? { ...entry, by: "Another" } : entry));
  await writeFile(at("job.json"), JSON.stringify({ ...long, trail }));
  const { err } = await rillbook("shorten", at("job.json"), "-o", at("short.json"));
  expect(err).toMatch(/^trail-broken: .*Entry 3 /);
});

test.each([
  ["one entry for each input", fenceTrail, /its trail has 11 entries, one for each input\./],
  ["one entry", fenceTrail.slice(0, 1), /its trail has 1 entry, one for each input\./],
  ["no trail", [], /its trail has no entry\./],
])("of %s nothing is left out, and nothing written", async (_, trail, words) => {
  await writeFile(at("job.json"), JSON.stringify({ ...long, trail }));
  const { status, out } = await rillbook("shorten", at("job.json"), "-o", at("short.json"));
  expect([status, out]).toEqual([0, expect.stringMatching(words)]);
  expect(out).toContain("nothing to shorten");
  await expect(readFile(at("short.json"))).rejects.toThrow("ENOENT");
});
