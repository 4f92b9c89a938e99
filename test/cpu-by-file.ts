import { appendFileSync, readFileSync } from "node:fs";
import { afterAll, expect } from "vitest";

// `TEST_CPU=FILE npm test` has each test file add a line: its own processor seconds, those of the programs that it
// started and that ended, its path. Unlike the clock they say the same on a machine that does other things as well.

/** What the system has counted of children that were waited for, and of theirs: a hundred ticks a second. */
function ofChildren(): number {
  const state = readFileSync("/proc/self/stat", "utf8");
  const [user, system] = state
    .slice(state.lastIndexOf(")") + 2)
    .split(" ")
    .slice(13, 15);
  return (Number(user) + Number(system)) / 100;
}

const begun = process.cpuUsage();
const children = ofChildren();

afterAll(() => {
  const { user, system } = process.cpuUsage(begun);
  const [own, started] = [(user + system) / 1e6, ofChildren() - children];
  appendFileSync(
    process.env.TEST_CPU as string,
    `${own.toFixed(2)} ${started.toFixed(2)} ${expect.getState().testPath}\n`,
  );
});
