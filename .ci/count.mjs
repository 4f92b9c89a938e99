// Prints "N passed, N failed" from a vitest JSON report; exits non-zero unless all that ran passed.
import { existsSync, readFileSync } from "node:fs";

const path = process.argv[2];
const report = existsSync(path) ? JSON.parse(readFileSync(path, "utf8")) : { testResults: [] };

const tests = report.testResults.flatMap((file) => file.assertionResults);
// A file that does not load has no tests to fail: it counts as one.
const broken = report.testResults.filter(
  (file) => file.status === "failed" && !file.assertionResults.some((t) => t.status === "failed"),
);
const passed = tests.filter((t) => t.status === "passed").length;
const skipped = tests.filter((t) => t.status !== "passed" && t.status !== "failed");
const failed = tests.length - passed + broken.length;

if (tests.length === 0) console.log("No test ran.");
for (const t of skipped) console.log(`Not run, so counted as failed: ${t.fullName}`);
for (const file of broken) console.log(`Did not load, so counted as failed: ${file.name}`);
console.log(`${passed} passed, ${failed} failed`);
process.exitCode = passed > 0 && failed === 0 && report.success ? 0 : 1;
