import { appendFileSync } from "node:fs";
import { afterAll, expect } from "vitest";

// `TEST_CPU=FILE npm test` has each test file add a line: its processor seconds, without those of programs that it
// starts. Unlike the clock they say the same on a machine that does other things as well.

const begun = process.cpuUsage();

afterAll(() => {
  const { user, system } = process.cpuUsage(begun);
  const seconds = ((user + system) / 1e6).toFixed(2);
  appendFileSync(process.env.TEST_CPU as string, `${seconds} ${expect.getState().testPath}\n`);
});
