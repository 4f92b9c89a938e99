import { execFile } from "node:child_process";
import { mkdir, mkdtemp, readdir, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { promisify } from "node:util";
import { afterAll, beforeAll, expect, test } from "vitest";
import { changeFile } from "../../../engine/output/change.js";
import { outputTo } from "../../../engine/output/write.js";
import { compiled } from "../../support/compiled.js";
import { started } from "../../support/held-program.js";
import type { Point } from "../../support/stopping.js";

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

const run = (hold?: { at: Point; time: number }) => {
  const file = join(folder, "report.md");
  return { file, ...started(join(program, "test/engine/output/writer.js"), [file], hold) };
};
const whole = /^# Audit of (\d+)\nx{2000000}\nend$/;
const countIn = async (file: string) => Number(whole.exec(await readFile(file, "utf8"))?.[1]);

test.each([
  { at: "with an empty part", stands: 1, parts: 1 },
  { at: "with half a part", stands: 1, parts: 1 },
  { at: "before the part takes the place", stands: 1, parts: 1 },
  { at: "after the part took the place", stands: 2, parts: 0 },
] as const)(
  "a run killed $at leaves the file whole, and its part goes next time",
  async ({ at, stands, parts }) => {
    const { file, still, kill, ended } = run({ at, time: 3 });
    await still;
    kill();
    expect(await ended).toEqual({ code: null, err: "", said: ["0", "1"] });
    expect(await countIn(file)).toBe(stands);
    expect(await readdir(folder)).toHaveLength(1 + parts);
    await (await outputTo(file, plan)).write("# Audit of the last");
    expect(await readdir(folder)).toEqual(["report.md"]);
  },
);

test("a run killed at any moment leaves the file whole", async () => {
  for (let round = 0; round < 4; round++) {
    const { file, spoke, kill, ended } = run();
    await spoke;
    await new Promise((settle) => setTimeout(settle, Math.random() * 40));
    kill();
    const { said } = await ended;
    const last = await countIn(file);
    // it may have been killed before it could say so
    expect([said.length - 1, said.length]).toContain(last);
    expect((await readdir(folder)).length).toBeLessThanOrEqual(2);
  }
  await (await outputTo(join(folder, "report.md"), plan)).write("# Audit of the last");
  expect(await readdir(folder)).toEqual(["report.md"]);
});

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
