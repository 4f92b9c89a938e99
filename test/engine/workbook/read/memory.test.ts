import { execFile } from "node:child_process";
import { rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { promisify } from "node:util";
import { afterAll, beforeAll, expect, test } from "vitest";
import { compiled } from "../../../support/compiled.js";
import { costly, hostile } from "./hostile-files.js";

const run = promisify(execFile);
let folder: string;

beforeAll(async () => {
  folder = await compiled("engine/workbook/read/read-file.ts");
  writeFileSync(
    join(folder, "measure.js"),
    `import { readWorkbookFile } from "./engine/workbook/read/read-file.js";
     import { readFileSync } from "node:fs";
     const code = await readWorkbookFile(process.argv[2]).then(() => "read", (error) => error.code);
     // the most since the program began: what the system counts as maxRSS is at least what the process that started it held
     const [, peak] = /^VmHWM:\\s*(\\d+) kB$/m.exec(readFileSync("/proc/self/status", "utf8"));
     console.log(JSON.stringify({ code, megabytes: peak / 1024 }));`,
  );
}, 60000);
afterAll(() => rmSync(folder, { recursive: true }));

/** Reads a file in a process of its own. */
async function measured(bytes: Uint8Array): Promise<{ code: string; megabytes: number }> {
  const path = join(folder, "hostile.xlsx");
  writeFileSync(path, bytes);
  const { stdout } = await run(process.execPath, [
    "--max-old-space-size=300",
    join(folder, "measure.js"),
    path,
  ]);
  if (process.env.TEST_FIGURES) console.log(stdout);
  return JSON.parse(stdout);
}

test.each(Object.entries(costly))("%s: read within 300 MB", { timeout: 60000 }, async (_, make) => {
  const { code, megabytes } = await measured(make());
  expect(code).toBe("read");
  expect(megabytes).toBeLessThan(300);
});

test.each([
  "a bomb that states a believable size",
  "endless empty elements",
  "one element with endless attributes",
  "a million rows",
  "rows within the size of a part",
  "one long formula shared by many cells",
])("%s is refused within 300 MB", { timeout: 60000 }, async (name) => {
  const file = hostile.find(([known]) => known === name);
  if (file === undefined) throw new Error(`no hostile file is called ${name}`);
  const { code, megabytes } = await measured(file[1]());
  expect(code).toBe(file[2]);
  expect(megabytes).toBeLessThan(300);
});
