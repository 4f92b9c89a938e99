import { execFile } from "node:child_process";
import { mkdir, readdir } from "node:fs/promises";
import { join } from "node:path";
import { promisify } from "node:util";
import { expect, test } from "vitest";
import { rerun } from "../../../engine/rerun/rerun.js";
import { fenceTrade, folder, options, writeJob } from "./old-fence.js";

// a disk of a few pages is full at the first line, or not before the summary; it takes the superuser to make one
test.for<[number, RegExp]>([
  [4, /rerun\.(xlsx|jsonl) cannot be written \(ENOSPC\): the disk is full/],
  [12, /rerun\.(xlsx|jsonl) cannot be written \(ENOSPC\): the disk is full/],
])(
  "a disk of %d KB is told in a sentence, and no part stays on it",
  async ([size, sentence], { skip }) => {
    const [jobs, disk] = [await folder(), join(await folder(), "disk")];
    for (let i = 0; i < 30; i++) await writeJob(jobs, `J-${i}`);
    await mkdir(disk);
    const program = promisify(execFile);
    const mounted = await program("mount", [
      "-t",
      "tmpfs",
      "-o",
      `size=${size}k`,
      "tmpfs",
      disk,
    ]).then(
      () => true,
      () => false,
    );
    if (!mounted) return skip();
    try {
      const run = rerun(
        fenceTrade,
        undefined,
        options([jobs], { output: join(disk, "rerun.xlsx") }),
      );
      await expect(run).rejects.toMatchObject({
        code: "disk-full",
        message: expect.stringMatching(sentence),
      });
      expect((await readdir(disk)).filter((name) => name.endsWith(".part"))).toEqual([]);
    } finally {
      await program("umount", [disk]);
    }
  },
);
