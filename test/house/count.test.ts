import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { expect, test } from "vitest";
import { repository } from "./repository.js";

type States = readonly (readonly string[])[];

/** The last line and the exit status for reports of test files given as lists of their tests' states; an empty one is not written. */
function count(reports: readonly States[]) {
  const folder = mkdtempSync(join(tmpdir(), "rillbook-count-"));
  try {
    const paths = reports.map((files, i) => {
      const testResults = files.map((states) => ({
        name: "some.test.ts",
        status: states.length > 0 && !states.includes("failed") ? "passed" : "failed",
        assertionResults: states.map((status) => ({ status, fullName: "some test" })),
      }));
      const success = testResults.every((file) => file.status === "passed");
      const path = join(folder, `report-${i}.json`);
      if (files.length > 0) writeFileSync(path, JSON.stringify({ testResults, success }));
      return path;
    });
    const run = spawnSync("node", [".ci/count.mjs", ...paths], {
      cwd: repository,
      encoding: "utf8",
    });
    return [run.stdout.trim().split("\n").at(-1), run.status];
  } finally {
    rmSync(folder, { recursive: true });
  }
}

const fine: States = [["passed", "passed"], ["passed"]];

test.each<[string, States[], string, number]>([
  ["all pass", [fine], "3 passed, 0 failed", 0],
  ["all pass under each release of Node", [fine, fine], "6 passed, 0 failed", 0],
  ["one fails", [[["passed", "failed"]]], "1 passed, 1 failed", 1],
  ["one fails under a later release", [fine, [["failed"]]], "3 passed, 1 failed", 1],
  ["a file does not load", [[["passed"], []]], "1 passed, 1 failed", 1],
  ["a test is skipped", [[["passed", "skipped"]]], "1 passed, 1 failed", 1],
  ["no report was written", [[]], "0 passed, 1 failed", 1],
  ["one of the reports was not written", [fine, []], "3 passed, 1 failed", 1],
  ["there is nothing to count", [], "0 passed, 0 failed", 1],
])("continuous integration counts right when %s", (_, reports, line, status) => {
  expect(count(reports)).toEqual([line, status]);
});
