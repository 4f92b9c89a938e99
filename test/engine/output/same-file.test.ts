import { afterEach, expect, test, vi } from "vitest";

// A file system that knows no letter case, as those of Windows and macOS are: simulated, for none is at hand here.

const files = new Map<string, { dev: bigint; ino: bigint }>();

vi.mock("node:fs/promises", async (original) => ({
  ...(await original<typeof import("node:fs/promises")>()),
  stat: async (path: string) => {
    const found = files.get(path.toLowerCase());
    if (found === undefined) throw Object.assign(new Error(path), { code: "ENOENT" });
    return found;
  },
  realpath: async (path: string) => path.toLowerCase(),
}));

const { isSameFile } = await import("../../../engine/output/target.js");

afterEach(() => files.clear());

async function same(path: string, other: string): Promise<boolean> {
  const state = files.get(path.toLowerCase());
  return isSameFile({ asked: path, path, state } as Parameters<typeof isSameFile>[0], other);
}

test.each<[string, bigint]>([
  ["numbers its files", 71n],
  ["numbers no files", 0n],
])("one file under two spellings is one file where the file system %s", async (_, ino) => {
  files.set("/jobs/pond.json", { dev: 5n, ino });
  expect(await same("/jobs/Pond.json", "/jobs/POND.JSON")).toBe(true);
  expect(await same("/jobs/pond.json", "/jobs/Pond.json")).toBe(true);
});

test.each<[string, bigint, bigint]>([
  ["of two numbers", 71n, 72n],
  ["without numbers", 0n, 0n],
])("two files %s are two", async (_, one, two) => {
  files.set("/jobs/pond.json", { dev: 5n, ino: one });
  files.set("/jobs/pond-2.json", { dev: 5n, ino: two });
  expect(await same("/jobs/pond.json", "/jobs/Pond-2.json")).toBe(false);
});

test("the same number on another device is another file, and one that is missing is none", async () => {
  files.set("/jobs/pond.json", { dev: 5n, ino: 71n });
  files.set("/copy/pond.json", { dev: 6n, ino: 71n });
  expect(await same("/jobs/pond.json", "/copy/pond.json")).toBe(false);
  expect(await same("/jobs/pond.json", "/jobs/gone.json")).toBe(false);
  expect(await same("/jobs/gone.json", "/jobs/pond.json")).toBe(false);
});
