import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { expect, test } from "vitest";
import { repository } from "./repository.js";

/** The last line and the exit status for test files given as lists of their tests' states. */
function count(...files: readonly (readonly string[])[]) {
  const folder = mkdtempSync(join(tmpdir(), "rillbook-count-"));
  try {
    const testResults = files.map((states) => ({
      name: "some.test.ts",
      status: states.length > 0 && !states.includes("failed") ? "passed" : "failed",
      assertionResults: states.map((status) => ({ status, fullName: "some test" })),
    }));
    const success = testResults.every((file) => file.status === "passed");
    const report = join(folder, "report.json");
    if (files.length > 0) writeFileSync(report, JSON.stringify({ testResults, success }));
    const run = spawnSync("node", [".ci/count.mjs", report], { cwd: repository, encoding: "utf8" });
    return [run.stdout.trim().split("\n").at(-1), run.status];
  } finally {
    rmSync(folder, { recursive: true });
  }
}

test.each([
  ["all pass", [["passed", "passed"], ["passed"]], "3 passed, 0 failed", 0],
  ["one fails", [["passed", "failed"]], "1 passed, 1 failed", 1],
  ["a file does not load", [["passed"], []], "1 passed, 1 failed", 1],
  ["a test is skipped", [["passed", "skipped"]], "1 passed, 1 failed", 1],
  ["no report was written", [], "0 passed, 0 failed", 1],
])("continuous integration counts right when %s", (_, files, line, status) => {
  expect(count(...files)).toEqual([line, status]);
});
