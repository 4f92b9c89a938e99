import { mkdir, mkdtemp, readdir, readFile, rm, utimes, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import type { JobRecord } from "../../../engine/job/record.js";
import type { TrailEntry } from "../../../engine/job/trail/entry.js";
import { verifyTrail } from "../../../engine/job/trail/verify.js";
import { compiled } from "../../support/compiled.js";
import { fenceJob } from "../../support/fence.js";
import { started } from "../../support/held-program.js";
import type { Point } from "../../support/stopping.js";

let program: string;
let folder: string;

beforeAll(async () => {
  program = await compiled("test/engine/set/writer.ts");
  folder = await mkdtemp(join(tmpdir(), "rillbook-writers-"));
}, 60_000);
afterAll(async () => {
  await rm(program, { recursive: true });
  await rm(folder, { recursive: true });
});

async function newFile(name: string): Promise<string> {
  await mkdir(join(folder, name));
  const file = join(folder, name, "job.json");
  await writeFile(file, JSON.stringify(fenceJob));
  return file;
}

const trailOf = async (file: string): Promise<readonly TrailEntry[]> =>
  (JSON.parse(await readFile(file, "utf8")) as JobRecord).trail ?? [];

/** Starts a writer; the `time`th of its changes is held at a point where one is named. */
const writer = (file: string, by: string, times: number, hold?: { at: Point; time: number }) =>
  started(join(program, "test/engine/set/writer.js"), [file, by, String(times)], hold);

/** Lets a writer write to its end. */
const written = (file: string, by: string, times: number) => writer(file, by, times).ended;

/** The trail's entries, which are whole and in order, each in the words in which its writer told it. */
async function toldBy(file: string): Promise<string[]> {
  const trail = await trailOf(file);
  expect(verifyTrail(trail)).toEqual([]);
  return trail.map(({ by, note }) => `${by} ${note}`);
}

test("three writers at once lose no entry", async () => {
  const file = await newFile("together");
  const ends = await Promise.all(["A", "B", "C"].map((by) => written(file, by, 15)));
  expect(ends.map(({ code, err }) => [code, err])).toEqual(Array(3).fill([0, ""]));
  const told = await toldBy(file);
  expect(told).toHaveLength(45);
  expect(told.sort()).toEqual(ends.flatMap(({ said }) => said).sort());
}, 60_000);

test("ten writers at once lose no entry", async () => {
  const file = await newFile("ten");
  const names = Array.from({ length: 10 }, (_, i) => `W${i}`);
  const ends = await Promise.all(names.map((by) => written(file, by, 3)));
  const done = ends.flatMap(({ said }) => said).filter((word) => !word.includes("refused"));
  expect((await toldBy(file)).sort()).toEqual(done.sort());
  expect(ends.flatMap(({ said }) => said)).toHaveLength(30);
  expect(await readdir(join(folder, "ten"))).toEqual(["job.json"]);
}, 120_000);

const before = ["A 1", "A 2"];
const places = [
  { at: "before the lock", done: false, holds: false },
  { at: "with the lock", done: false, holds: true },
  { at: "with an empty part", done: false, holds: true },
  { at: "with half a part", done: false, holds: true },
  { at: "before the part takes the place", done: false, holds: true },
  { at: "after the part took the place", done: true, holds: false },
] as const;

test.each(places)(
  "a writer killed $at leaves a whole file with all it said was done, and a lock that is free at once",
  async ({ at, done, holds }) => {
    const file = await newFile(`killed ${at}`);
    const { still, kill, ended } = writer(file, "A", 9, { at, time: 3 });
    await still;
    kill();
    expect(await ended).toEqual({ code: null, err: "", said: before });
    const all = done ? [...before, "A 3"] : before;
    expect(await toldBy(file)).toEqual(all);
    expect((await lockOf(file)).length).toBe(holds ? 1 : 0);
    // as if it lived for long yet: that its holder is dead is what frees it, no time
    await aged(file, -600_000);
    expect((await written(file, "B", 1)).said).toEqual(["B 1"]);
    expect(await toldBy(file)).toEqual([...all, "B 1"]);
    expect(await readdir(join(folder, `killed ${at}`))).toEqual(["job.json"]);
  },
  60_000,
);

test("a writer killed at any moment leaves a whole file with all it said was done", async () => {
  for (let round = 0; round < 3; round++) {
    const file = await newFile(`killed-${round}`);
    const { spoke, kill, ended } = writer(file, "A", 100_000);
    await spoke;
    // spread over some writes: each takes a few milliseconds
    await new Promise((settle) => setTimeout(settle, Math.random() * 60));
    kill();
    const { code, said } = await ended;
    expect(code).toBeNull();
    const told = await toldBy(file);
    expect(told.slice(0, said.length)).toEqual(said);
    expect(told.length).toBeLessThanOrEqual(said.length + 1);
  }
}, 60_000);

const lockOf = (file: string): Promise<string[]> => readdir(`${file}.lock`).catch(() => []);

/** Makes the lock look as if its holder had given no sign of life for so long. */
async function aged(file: string, ms: number): Promise<void> {
  const past = new Date(Date.now() - ms);
  for (const part of await lockOf(file)) await utimes(join(`${file}.lock`, part), past, past);
}

test.each(places)(
  "a writer that stood still $at while another wrote loses no entry, nor the other's",
  async ({ at, done, holds }) => {
    const file = await newFile(`still ${at}`);
    const { still, goOn, ended } = writer(file, "A", 5, { at, time: 3 });
    await still;
    expect((await lockOf(file)).length).toBe(holds ? 1 : 0);
    await aged(file, 11_000);
    expect((await written(file, "B", 2)).said).toEqual(["B 1", "B 2"]);
    goOn();
    // whose lock was taken for a dead one's is told so, and begins anew with the next
    const third = holds ? "A 3 refused: job-locked" : "A 3";
    const { code, err, said } = await ended;
    expect([code, err, said]).toEqual([0, "", [...before, third, "A 4", "A 5"]]);
    const others = ["B 1", "B 2"];
    const middle = done ? ["A 3", ...others] : holds ? others : [...others, "A 3"];
    expect(await toldBy(file)).toEqual([...before, ...middle, "A 4", "A 5"]);
    expect(await readdir(join(folder, `still ${at}`))).toEqual(["job.json"]);
  },
  60_000,
);

test("an old lock of another machine is free in time", async () => {
  const file = await newFile("stale");
  const stranger = ".rillbook-00000000-1-00000000-0000-0000-0000-000000000000.part";
  await mkdir(`${file}.lock`);
  await writeFile(join(`${file}.lock`, stranger), "");
  const begun = Date.now();
  await aged(file, 8_000);
  expect((await written(file, "B", 1)).said).toEqual(["B 1"]);
  // ten seconds after its last sign of life
  expect(Date.now() - begun).toBeGreaterThanOrEqual(2_000);
}, 30_000);
