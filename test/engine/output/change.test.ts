import {
  chmod,
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
import { changeFile } from "../../../engine/output/change.js";
import { lockOn } from "../../../engine/output/lock.js";
import { targetOf } from "../../../engine/output/target.js";

let folder: string;
let file: string;
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), "rillbook-change-"));
  file = join(folder, "job.json");
  await writeFile(file, "one");
});
afterEach(() => rm(folder, { recursive: true }));

const add = (word: string) =>
  changeFile(file, (old) => ({ content: `${old} ${word}`, result: word }));
const now = () => readFile(file, "utf8");

test("changes what it reads, keeps the mode, and leaves nothing behind", async () => {
  await chmod(file, 0o640);
  expect(await add("two")).toBe("two");
  expect(await now()).toBe("one two");
  expect((await stat(file)).mode & 0o777).toBe(0o640);
  expect(await readdir(folder)).toEqual(["job.json"]);
});

test("many changes at once lose nothing", async () => {
  const words = Array.from({ length: 20 }, (_, i) => `w${i}`);
  await Promise.all(words.map(add));
  expect((await now()).split(" ").sort()).toEqual(["one", ...words].sort());
  expect(await readdir(folder)).toEqual(["job.json"]);
});

test("one lock for one file, also by a link", async () => {
  await symlink("job.json", join(folder, "link.json"));
  const lock = await lockOn(await targetOf(join(folder, "link.json")));
  await expect(lockOn(await targetOf(file), 200)).rejects.toMatchObject({
    code: "job-locked",
    message: expect.stringContaining(`(process ${process.pid}); job.json.lock stands beside it`),
  });
  await lock.release();
  await (await lockOn(await targetOf(file), 200)).release();
});

/** Makes the lock that stands look as if its holder had given no sign of life for a while. */
async function aged(): Promise<void> {
  const [part = ""] = await readdir(`${file}.lock`);
  const past = new Date(Date.now() - 11_000);
  await utimes(join(`${file}.lock`, part), past, past);
}

test("who stood still while another took over puts nothing in place, and is told", async () => {
  const still = changeFile(file, async (old) => {
    await aged();
    await add("two");
    return { content: `${old} lost`, result: undefined };
  });
  await expect(still).rejects.toMatchObject({
    code: "job-locked",
    message: expect.stringMatching(/stood still so long that another took its place\. Try again\./),
  });
  expect(await now()).toBe("one two");
  expect(await readdir(folder)).toEqual(["job.json"]);
});

test("the same where the other holds the lock at that moment", async () => {
  let other: Awaited<ReturnType<typeof lockOn>> | undefined;
  const still = changeFile(file, async () => {
    await aged();
    other = await lockOn(await targetOf(file));
    return { content: "lost", result: undefined };
  });
  await expect(still).rejects.toMatchObject({ code: "job-locked" });
  expect(await readdir(`${file}.lock`)).toHaveLength(1);
  expect(await now()).toBe("one");
  await other?.release();
});

test("a file that another program saved meanwhile stays as that program wrote it", async () => {
  const change = changeFile(file, async () => {
    await writeFile(file, "by hand");
    return { content: "lost", result: undefined };
  });
  await expect(change).rejects.toMatchObject({ code: "job-changed" });
  expect(await now()).toBe("by hand");
  expect(await readdir(folder)).toEqual(["job.json"]);
});

test("the same where there was no file before", async () => {
  await rm(file);
  const change = changeFile(file, async (old) => {
    expect(old).toBeUndefined();
    await writeFile(file, "by hand");
    return { content: "lost", result: undefined };
  });
  await expect(change).rejects.toMatchObject({ code: "file-exists" });
  expect(await now()).toBe("by hand");
});

test("a fault while the content is made leaves file and lock free", async () => {
  await expect(changeFile(file, () => Promise.reject(new TypeError("a fault")))).rejects.toThrow(
    TypeError,
  );
  await add("two");
  expect(await now()).toBe("one two");
});

test("an empty lock, as a run killed at the last moment leaves it, is nobody's", async () => {
  await mkdir(`${file}.lock`);
  await add("two");
  expect(await readdir(folder)).toEqual(["job.json"]);
});
