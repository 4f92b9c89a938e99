import { spawn } from "node:child_process";
import { mkdir, mkdtemp, readFile, rm, utimes, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import type { JobRecord } from "../../../../engine/job/record.js";
import type { TrailEntry } from "../../../../engine/job/trail/entry.js";
import { verifyTrail } from "../../../../engine/job/trail/verify.js";
import { compiled } from "../../../support/compiled.js";
import { fenceJob } from "../../../support/fence.js";

let program: string;
let folder: string;

beforeAll(async () => {
  program = await compiled("test/engine/job/set/writer.ts");
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
  const script = join(program, "test/engine/job/set/writer.js");
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
  for (let round = 0; round < 14; round++) {
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
  expect(lastWords).toBeGreaterThan(14);
}, 60_000);

test("the lock of a killed writer expires", async () => {
  const file = await newFile("stale");
  await mkdir(`${file}.lock`);
  const nineSecondsAgo = new Date(Date.now() - 9000);
  await utimes(`${file}.lock`, nineSecondsAgo, nineSecondsAgo);
  const started = Date.now();
  expect((await writer(file, "A", 1)).said).toEqual(["A 1"]);
  expect(Date.now() - started).toBeGreaterThan(700);
}, 30_000);
