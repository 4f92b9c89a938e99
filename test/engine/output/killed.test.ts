import { execFile, spawn } from "node:child_process";
import { mkdir, mkdtemp, readdir, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { promisify } from "node:util";
import { afterAll, beforeAll, expect, test } from "vitest";
import { changeFile } from "../../../engine/output/change.js";
import { outputTo } from "../../../engine/output/write.js";
import { compiled } from "../../support/compiled.js";

let program: string;
let folder: string;
beforeAll(async () => {
  program = await compiled("test/engine/output/writer.ts");
  folder = await mkdtemp(join(tmpdir(), "rillbook-killed-"));
}, 60_000);
afterAll(async () => {
  await rm(program, { recursive: true });
  await rm(folder, { recursive: true });
});

const plan = { kind: "report", inputs: [] } as const;

/** Kills a process that writes, so many milliseconds after it said that it wrote once. */
async function killedAfter(file: string, ms: number): Promise<void> {
  const script = join(program, "test/engine/output/writer.js");
  const child = spawn(process.execPath, [script, file]);
  child.stdout.once("data", () => setTimeout(() => child.kill("SIGKILL"), ms));
  await new Promise((settle) => child.on("close", settle));
}

test("a run killed at any moment leaves the file whole, and its part goes next time", async () => {
  const file = join(folder, "report.md");
  let parts = 0;
  for (let round = 0; round < 25; round++) {
    await killedAfter(file, Math.random() * 40);
    expect(await readFile(file, "utf8")).toMatch(/^# Audit of \d+\nx{2000000}\nend$/);
    const left = (await readdir(folder)).length - 1;
    expect(left).toBeLessThanOrEqual(1);
    parts += left;
  }
  expect(parts).toBeGreaterThan(0);
  await (await outputTo(file, plan)).write("# Audit of the last");
  expect(await readdir(folder)).toEqual(["report.md"]);
}, 120_000);

/** Gives a folder on a disk of 64 KB; nothing where no disk can be made, as without the superuser's rights. */
async function smallDisk(): Promise<string | undefined> {
  const disk = join(folder, "disk");
  await mkdir(disk);
  const made = promisify(execFile)("mount", ["-t", "tmpfs", "-o", "size=64k", "tmpfs", disk]);
  return made.then(
    () => disk,
    () => undefined,
  );
}

test("a full disk is told in a sentence, and what was there is whole", async (context) => {
  const disk = await smallDisk();
  if (disk === undefined) return context.skip();
  try {
    const report = join(disk, "report.md");
    const record = join(disk, "job.json");
    await writeFile(report, "# Audit of before");
    await writeFile(record, "{}");
    const output = await outputTo(report, plan);
    const content = "x".repeat(200_000);
    const told = {
      code: "disk-full",
      message: expect.stringMatching(
        /cannot be written \(ENOSPC\): the disk is full\. .* Make room/,
      ),
    };
    await expect(output.write(content)).rejects.toMatchObject(told);
    await expect(changeFile(record, () => ({ content, result: 0 }))).rejects.toMatchObject(told);
    expect(await readFile(report, "utf8")).toBe("# Audit of before");
    expect(await readFile(record, "utf8")).toBe("{}");
    expect(await readdir(disk)).toEqual(["job.json", "report.md"]);
  } finally {
    await promisify(execFile)("umount", [disk]);
  }
});
