import { spawnSync } from "node:child_process";
import { expect, test } from "vitest";
import { heapFlagOf } from "../../../engine/rerun/thread-heap.js";

test.each([
  ["11.3.244.8-node.33", true],
  ["12.4.254.21-node.57", true],
  ["11.30.1", false],
])("threads under the release %s of V8 begin with a larger heap: %s", (v8, asked) => {
  expect(heapFlagOf(v8) !== undefined).toBe(asked);
});

test("the V8 at hand knows the flag that it is given", () => {
  const flag = heapFlagOf(process.versions.v8);
  const of = (...flags: string[]) =>
    spawnSync(process.execPath, [...flags, "-e", ""], { encoding: "utf8" });
  expect(of(...(flag === undefined ? [] : [flag]))).toMatchObject({ status: 0, stderr: "" });
  expect(of("--no-such-flag").status).not.toBe(0);
});
