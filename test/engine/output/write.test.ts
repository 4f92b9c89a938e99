import { spawn } from "node:child_process";
import {
  chmod,
  chown,
  link,
  lstat,
  mkdir,
  mkdtemp,
  readdir,
  readFile,
  rm,
  stat,
  symlink,
  utimes,
  writeFile,
} from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, expect, test } from "vitest";
import { RillbookError } from "../../../engine/errors.js";
import type { Plan } from "../../../engine/output/judge.js";
import { outputTo, writeNew } from "../../../engine/output/write.js";

let folder: string;
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), "rillbook-output-"));
});
afterEach(() => rm(folder, { recursive: true }));

const plan: Plan = { kind: "report", inputs: [] };
const old = "# Audit of a bid\n\nold";
const at = (name: string) => join(folder, name);
const text = (name: string) => readFile(at(name), "utf8");

async function write(name: string, content: Uint8Array | string = "new", more = {}) {
  const output = await outputTo(at(name), { ...plan, ...more });
  await output.write(content);
}

async function failure(name: string, more = {}): Promise<RillbookError> {
  const error = await write(name, "new", more).catch((caught) => caught);
  expect(error).toBeInstanceOf(RillbookError);
  expect(error.exitStatus).toBe(2);
  return error;
}

test("writes a new file, of text or bytes", async () => {
  await write("a.md", "Größe");
  expect(await text("a.md")).toBe("Größe");
  await write("b.md", new Uint8Array([0, 255, 7]));
  expect([...(await readFile(at("b.md")))]).toEqual([0, 255, 7]);
  expect(await readdir(folder)).toEqual(["a.md", "b.md"]);
});

test.each([
  ["one of its own kind", old],
  ["an empty one", ""],
])("replaces a file whole: %s", async (_, before) => {
  await writeFile(at("a.md"), before);
  await write("a.md");
  expect(await text("a.md")).toBe("new");
  expect(await readdir(folder)).toEqual(["a.md"]);
});

test("keeps the old file, and leaves nothing behind, where writing fails on the way", async () => {
  await writeFile(at("a.md"), old);
  const error = await write("a.md", { not: "content" } as never).catch((caught) => caught);
  expect(error.code).toBe("output-not-writable");
  expect(error.message).toMatch(/a\.md cannot be written \(ERR_INVALID_ARG_TYPE\)/);
  expect(await text("a.md")).toBe(old);
  expect(await readdir(folder)).toEqual(["a.md"]);
});

test("writes several files of one folder at once", async () => {
  const names = Array.from({ length: 20 }, (_, i) => `${String(i).padStart(2, "0")}.md`);
  await Promise.all(names.map((name) => write(name, `# Audit of ${name}`)));
  await Promise.all(names.map((name) => write("same.md", `# Audit of ${name}`)));
  expect(await readdir(folder)).toEqual([...names, "same.md"]);
  expect(names.map((name) => `# Audit of ${name}`)).toContain(await text("same.md"));
});

test("keeps mode and owner of the file it replaces", async () => {
  await writeFile(at("a.md"), old);
  await chmod(at("a.md"), 0o640);
  const root = process.getuid?.() === 0;
  if (root) await chown(at("a.md"), 12_345, 23_456);
  const before = await stat(at("a.md"));
  await write("a.md");
  const { mode, uid, gid } = await stat(at("a.md"));
  expect([mode & 0o7777, uid, gid]).toEqual([0o640, before.uid, before.gid]);
  expect(await text("a.md")).toBe("new");
});

test.each([
  ["a file that is there", true],
  ["a file that is not there yet", false],
])("writes through symbolic links to %s", async (_, there) => {
  await mkdir(at("real"));
  if (there) await writeFile(at("real/a.md"), old);
  await symlink("real/a.md", at("one.md"));
  await symlink(at("one.md"), at("two.md"));
  await write("two.md");
  expect(await readFile(at("real/a.md"), "utf8")).toBe("new");
  expect((await lstat(at("two.md"))).isSymbolicLink()).toBe(true);
  expect(await readdir(at("real"))).toEqual(["a.md"]);
});

test("links in a circle are told", async () => {
  await symlink("b.md", at("a.md"));
  await symlink("a.md", at("b.md"));
  expect((await failure("a.md")).message).toMatch(/a link that leads round in a circle/);
});

test("refuses a folder that is missing, by name, and does not make it", async () => {
  const error = await failure("bids/a.md");
  expect(error.code).toBe("folder-missing");
  expect(error.message).toBe(
    `The folder ${at("bids")} does not exist, so a.md cannot be written. Make the folder first.`,
  );
  expect(await readdir(folder)).toEqual([]);
});

test("refuses a file where a folder is needed", async () => {
  await writeFile(at("bids"), "");
  expect((await failure("bids/a.md")).code).toBe("folder-missing");
});

test("refuses a file that may only be read, also for the superuser", async () => {
  await writeFile(at("a.md"), old);
  await chmod(at("a.md"), 0o444);
  expect((await failure("a.md")).message).toMatch(/is marked as only to be read/);
  expect(await text("a.md")).toBe(old);
});

test.each([".~lock.a.md#", "~$a.md", "~$md"])(
  "refuses a file open in a spreadsheet (%s)",
  async (lock) => {
    const name = lock === "~$md" ? "a_md" : "a.md";
    await writeFile(at(name), old);
    await writeFile(at(lock), "");
    const error = await failure(name);
    expect(error.code).toBe(lock === "~$md" ? "output-open" : "output-open");
    expect(error.message).toMatch(/is open in a spreadsheet \(.* stands beside it\)/);
    expect(await text(name)).toBe(old);
    expect(await readdir(folder)).toHaveLength(2);
  },
);

test("does not mind another file that is open", async () => {
  await writeFile(at(".~lock.b.md#"), "");
  await writeFile(at("~$b.md"), "");
  await write("a.md");
  expect(await text("a.md")).toBe("new");
});

// too long a name fails for every user, root too, who may write to write-protected files
test("refuses what the system refuses, with its reason", async () => {
  const error = await failure(`${"x".repeat(300)}.md`);
  expect(error.code).toBe("output-not-writable");
  expect(error.message).toMatch(/cannot be written \(ENAMETOOLONG\)/);
  expect(await readdir(folder)).toEqual([]);
});

test("a file saved by somebody while the content was worked out is looked at again", async () => {
  await writeFile(at("a.md"), old);
  const output = await outputTo(at("a.md"), plan);
  await writeFile(at("a.md"), "a letter to the customer");
  await expect(output.write("new")).rejects.toMatchObject({ code: "output-kind" });
  expect(await text("a.md")).toBe("a letter to the customer");
  expect(await readdir(folder)).toEqual(["a.md"]);
});

test("a new file never takes the place of one, nor of one that came meanwhile", async () => {
  await writeNew(at("a.md"), plan, "first");
  await expect(writeNew(at("a.md"), plan, "second")).rejects.toMatchObject({ code: "file-exists" });
  const all = await Promise.allSettled(
    Array.from({ length: 10 }, (_, i) => writeNew(at("b.md"), plan, `# Audit of ${i}`)),
  );
  expect(all.filter(({ status }) => status === "fulfilled")).toHaveLength(1);
  expect(await text("a.md")).toBe("first");
  expect(await readdir(folder)).toEqual(["a.md", "b.md"]);
});

/** The name of a part as a process of that number on this machine leaves it. */
async function partOf(pid: number): Promise<string> {
  const { newPartName } = await import("../../../engine/output/part-file.js");
  return newPartName().replace(`-${process.pid}-`, `-${pid}-`);
}

async function deadPid(): Promise<number> {
  const child = spawn(process.execPath, ["-e", ""]);
  await new Promise((settle) => child.on("close", settle));
  return child.pid as number;
}

test("sweeps the parts of dead runs, and leaves those of others", async () => {
  const [dead, living] = [await partOf(await deadPid()), await partOf(process.ppid)];
  const stranger = dead.replace(/rillbook-.{8}/, "rillbook-00000000");
  const longGone = stranger.replace(/.{5}\.part$/, "00000.part");
  for (const name of [dead, living, stranger, longGone, ".rillbook-notes.part"]) {
    await writeFile(at(name), "x");
  }
  await mkdir(at(await partOf(await deadPid())));
  const weekAgo = new Date(Date.now() - 7 * 86_400_000);
  await utimes(at(longGone), weekAgo, weekAgo);
  await write("a.md");
  expect((await readdir(folder)).sort()).toEqual(
    [living, stranger, ".rillbook-notes.part", "a.md"].sort(),
  );
});

test.each<[string, (name: string) => Promise<string>]>([
  ["by the same path", async (name) => name],
  [
    "by a hard link",
    async (name) => {
      await link(at(name), at("hard.md"));
      return "hard.md";
    },
  ],
  [
    "by a symbolic link",
    async (name) => {
      await symlink(name, at("soft.md"));
      return "soft.md";
    },
  ],
  [
    "through a linked folder",
    async (name) => {
      await symlink(folder, at("same"));
      return `same/${name}`;
    },
  ],
])("refuses a file that the command reads, %s", async (_, other) => {
  await writeFile(at("a.md"), old);
  const target = await other("a.md");
  const error = await failure(target, { inputs: [at("a.md")] });
  expect(error.code).toBe("output-is-input");
  expect(await text("a.md")).toBe(old);
});
