import { spawn } from "node:child_process";
import { mkdir, mkdtemp, readdir, readFile, rm, utimes, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import type { JobRecord } from "../../../engine/job/record.js";
import type { TrailEntry } from "../../../engine/job/trail/entry.js";
import { verifyTrail } from "../../../engine/job/trail/verify.js";
import { compiled } from "../../support/compiled.js";
import { fenceJob } from "../../support/fence.js";

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

interface Ended {
  readonly code: number | null;
  readonly said: string[];
  readonly err: string;
}

/** Runs a writer; `killAfter` milliseconds from the first thing it says, it is killed. */
function writer(file: string, by: string, times: number, killAfter?: number): Promise<Ended> {
  const script = join(program, "test/engine/set/writer.js");
  const child = spawn(process.execPath, [script, file, by, String(times)]);
  let said = "";
  let err = "";
  child.stdout.on("data", (piece) => {
    if (said === "" && killAfter !== undefined) setTimeout(() => child.kill("SIGKILL"), killAfter);
    said += String(piece);
  });
  child.stderr.on("data", (piece) => {
    err += String(piece);
  });
  return new Promise((settle) => {
    child.on("close", (code) => settle({ code, err, said: said.split("\n").filter(Boolean) }));
  });
}

test("three writers at once lose no entry", async () => {
  const file = await newFile("together");
  const ends = await Promise.all(["A", "B", "C"].map((by) => writer(file, by, 15)));
  expect(ends.map(({ code, err }) => [code, err])).toEqual(Array(3).fill([0, ""]));
  const trail = await trailOf(file);
  expect(trail).toHaveLength(45);
  expect(verifyTrail(trail)).toEqual([]);
  expect(trail.map(({ by, note }) => `${by} ${note}`).sort()).toEqual(
    ends.flatMap(({ said }) => said).sort(),
  );
}, 60_000);

test("a writer killed at any moment leaves a whole file with all it said was done", async () => {
  let lastWords = 0;
  for (let round = 0; round < 10; round++) {
    const file = await newFile(`killed-${round}`);
    // spread over some writes: each takes a few milliseconds
    const { code, said } = await writer(file, "A", 100_000, 3 + Math.random() * 60);
    expect(code).toBeNull();
    const trail = await trailOf(file);
    expect(verifyTrail(trail)).toEqual([]);
    expect(trail.length).toBeGreaterThanOrEqual(said.length);
    expect(trail.length).toBeLessThanOrEqual(said.length + 1);
    lastWords += said.length;
  }
  expect(lastWords).toBeGreaterThan(10);
}, 60_000);

test("twenty writers at once lose no entry", async () => {
  const file = await newFile("twenty");
  const names = Array.from({ length: 20 }, (_, i) => `W${i}`);
  const ends = await Promise.all(names.map((by) => writer(file, by, 3)));
  const done = ends.flatMap(({ said }) => said).filter((word) => !word.includes("refused"));
  const trail = await trailOf(file);
  expect(verifyTrail(trail)).toEqual([]);
  expect(trail.map(({ by, note }) => `${by} ${note}`).sort()).toEqual(done.sort());
  expect(ends.flatMap(({ said }) => said)).toHaveLength(60);
  expect(await readdir(join(folder, "twenty"))).toEqual(["job.json"]);
}, 120_000);

/** Makes the lock look as if its holder had given no sign of life for a while; tells whether one stands. */
async function agedLock(file: string): Promise<boolean> {
  const past = new Date(Date.now() - 11_000);
  const held = await readdir(`${file}.lock`).catch(() => []);
  for (const part of held) await utimes(join(`${file}.lock`, part), past, past).catch(() => {});
  return held.length > 0;
}

test("a writer that stood still while others wrote loses no entry, nor theirs", async () => {
  let [caught, refused] = [0, 0];
  for (let round = 0; round < 30; round++) {
    const file = await newFile(`still-${round}`);
    const script = join(program, "test/engine/set/writer.js");
    const child = spawn(process.execPath, [script, file, "A", "40"]);
    let said = "";
    child.stdout.on("data", (piece) => {
      said += String(piece);
    });
    const closed = new Promise((settle) => child.on("close", settle));
    await new Promise((settle) => child.stdout.once("data", settle));
    await new Promise((settle) => setTimeout(settle, Math.random() * 40));
    child.kill("SIGSTOP");
    await new Promise((settle) => setTimeout(settle, 20));
    const held = await agedLock(file);
    const other = await writer(file, "B", 2);
    child.kill("SIGCONT");
    await closed;
    const all = [...said.split("\n").filter(Boolean), ...other.said];
    const done = all.filter((word) => !word.includes("refused"));
    const trail = await trailOf(file);
    expect(verifyTrail(trail)).toEqual([]);
    expect(trail.map(({ by, note }) => `${by} ${note}`).sort()).toEqual(done.sort());
    expect(all).toHaveLength(42);
    caught += held ? 1 : 0;
    refused += all.length - done.length;
    if (caught > 3) break;
  }
  expect(caught).toBeGreaterThan(2);
  expect(refused).toBeGreaterThan(0);
}, 180_000);

test("the lock of a killed writer is free at once, and an old one of another machine in time", async () => {
  const file = await newFile("stale");
  await writer(file, "A", 100_000, 10);
  const stranger = ".rillbook-00000000-1-00000000-0000-0000-0000-000000000000.part";
  await mkdir(`${file}.lock`, { recursive: true });
  for (const name of await readdir(`${file}.lock`)) await rm(join(`${file}.lock`, name));
  await writeFile(join(`${file}.lock`, stranger), "");
  const eightSecondsAgo = new Date(Date.now() - 8000);
  await utimes(join(`${file}.lock`, stranger), eightSecondsAgo, eightSecondsAgo);
  const started = Date.now();
  expect((await writer(file, "B", 1)).said).toEqual(["B 1"]);
  expect(Date.now() - started).toBeGreaterThan(700);
}, 30_000);
