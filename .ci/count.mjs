// Prints "N passed, N failed" from vitest's JSON reports, summed; exits non-zero unless each of them has tests and all passed.
import { existsSync, readFileSync } from "node:fs";

const none = { testResults: [], success: false };
const reports = process.argv
  .slice(2)
  .map((path) => ({ path, ...(existsSync(path) ? JSON.parse(readFileSync(path, "utf8")) : none) }));

const files = reports.flatMap(({ testResults }) => testResults);
const tests = files.flatMap((file) => file.assertionResults);
// A file that does not load has no tests to fail: it counts as one.
const broken = files.filter(
  (file) => file.status === "failed" && !file.assertionResults.some((t) => t.status === "failed"),
);
const empty = reports.filter(({ testResults }) => testResults.length === 0);
const passed = tests.filter((t) => t.status === "passed").length;
const skipped = tests.filter((t) => t.status !== "passed" && t.status !== "failed");
const failed = tests.length - passed + broken.length + empty.length;

for (const { path } of empty) console.log(`No test ran, counted as one failed: ${path}`);
for (const t of skipped) console.log(`Not run, so counted as failed: ${t.fullName}`);
for (const file of broken) console.log(`Did not load, so counted as failed: ${file.name}`);
console.log(`${passed} passed, ${failed} failed`);
const succeeded = reports.length > 0 && reports.every(({ success }) => success);
process.exitCode = succeeded && passed > 0 && failed === 0 ? 0 : 1;
