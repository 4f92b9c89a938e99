import { spawnSync } from "node:child_process";
import { expect, test } from "vitest";
import { flagOf } from "../../../engine/cli/compile-less.js";

test.each([
  ["11.3.244.8-node.33", true],
  ["12.4.254.21-node.57", true],
  ["13.6.233.17-node.53", false],
  ["11.30.1", false],
])("the release %s of V8 is asked to optimize later: %s", (v8, asked) => {
  expect(flagOf(v8) !== undefined).toBe(asked);
});

test("the V8 at hand knows the flag that it is given", () => {
  const flag = flagOf(process.versions.v8);
  const of = (...flags: string[]) =>
    spawnSync(process.execPath, [...flags, "-e", ""], { encoding: "utf8" });
  expect(of(...(flag === undefined ? [] : [flag]))).toMatchObject({ status: 0, stderr: "" });
  expect(of("--no-such-flag").status).not.toBe(0);
});
