import { mkdir, mkdtemp, readdir, readFile, rm, stat, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { RillbookError } from "../../engine/errors.js";
import { readText, writeWhole } from "../../engine/files.js";

let folder: string;
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), "rillbook-files-"));
});
afterEach(() => rm(folder, { recursive: true }));

const failure = async (path: string, content: Uint8Array | string = "new") => {
  const error = await writeWhole(path, content).catch((caught) => caught);
  expect(error).toBeInstanceOf(RillbookError);
  expect(error.exitStatus).toBe(2);
  return error as RillbookError;
};

describe("writeWhole", () => {
  it("writes a new file, of text or bytes", async () => {
    await writeWhole(join(folder, "a.txt"), "Größe");
    expect(await readFile(join(folder, "a.txt"), "utf8")).toBe("Größe");
    await writeWhole(join(folder, "b.bin"), new Uint8Array([0, 255, 7]));
    expect([...(await readFile(join(folder, "b.bin")))]).toEqual([0, 255, 7]);
    expect(await readdir(folder)).toEqual(["a.txt", "b.bin"]);
  });

  it("replaces an old file whole", async () => {
    const path = join(folder, "a.xlsx");
    await writeFile(path, "old and longer");
    await writeWhole(path, "new");
    expect(await readFile(path, "utf8")).toBe("new");
    expect(await readdir(folder)).toEqual(["a.xlsx"]);
  });

  it("keeps the old file, and leaves nothing behind, where writing fails on the way", async () => {
    const path = join(folder, "a.xlsx");
    await writeFile(path, "old");
    const error = await failure(path, { not: "content" } as never);
    expect(error.code).toBe("output-not-writable");
    expect(error.message).toMatch(/a\.xlsx cannot be written \(ERR_INVALID_ARG_TYPE\)\./);
    expect(await readFile(path, "utf8")).toBe("old");
    expect(await readdir(folder)).toEqual(["a.xlsx"]);
  });

  it("writes several files of one folder at once", async () => {
    const names = Array.from({ length: 20 }, (_, i) => `${String(i).padStart(2, "0")}.txt`);
    await Promise.all(names.map((name) => writeWhole(join(folder, name), name)));
    await Promise.all(names.map((name) => writeWhole(join(folder, "same.txt"), name)));
    expect(await readdir(folder)).toEqual([...names, "same.txt"]);
    expect(names).toContain(await readFile(join(folder, "same.txt"), "utf8"));
  });

  it("refuses a folder that is missing, by name, and does not make it", async () => {
    const error = await failure(join(folder, "bids", "a.xlsx"));
    expect(error.code).toBe("folder-missing");
    expect(error.message).toBe(
      `The folder ${join(folder, "bids")} does not exist, so a.xlsx cannot be written. Make the folder first.`,
    );
    expect(await readdir(folder)).toEqual([]);
  });

  it("refuses a file where a folder is needed", async () => {
    await writeFile(join(folder, "bids"), "");
    expect((await failure(join(folder, "bids", "a.xlsx"))).code).toBe("folder-missing");
  });

  it("refuses a folder as the file", async () => {
    await mkdir(join(folder, "a.xlsx"));
    const error = await failure(join(folder, "a.xlsx"));
    expect(error.code).toBe("output-is-folder");
    expect(error.message).toMatch(/a\.xlsx is a folder, not a file\. Name a file in it\./);
    expect((await stat(join(folder, "a.xlsx"))).isDirectory()).toBe(true);
  });

  it.each([".~lock.a.xlsx#", "~$a.xlsx", "~$xlsx"])(
    "refuses a file open in a spreadsheet (%s)",
    async (lock) => {
      const name = lock === "~$xlsx" ? "a_xlsx" : "a.xlsx";
      await writeFile(join(folder, name), "old");
      await writeFile(join(folder, lock), "");
      const error = await failure(join(folder, name));
      expect(error.code).toBe("output-open");
      expect(error.message).toMatch(
        /is open in a spreadsheet \(.* stands beside it\)\. Close it there, or write/,
      );
      expect(await readFile(join(folder, name), "utf8")).toBe("old");
      expect(await readdir(folder)).toHaveLength(2);
    },
  );

  it("does not mind another file that is open", async () => {
    await writeFile(join(folder, ".~lock.b.xlsx#"), "");
    await writeFile(join(folder, "~$b.xlsx"), "");
    await writeWhole(join(folder, "a.xlsx"), "new");
    expect(await readFile(join(folder, "a.xlsx"), "utf8")).toBe("new");
  });

  // too long a name fails for every user, root too, who may write to write-protected files
  it("refuses what the system refuses, with its reason", async () => {
    const error = await failure(join(folder, `${"x".repeat(300)}.xlsx`));
    expect(error.code).toBe("output-not-writable");
    expect(error.message).toMatch(/cannot be written \(ENAMETOOLONG\)/);
    expect(await readdir(folder)).toEqual([]);
  });
});

describe("readText", () => {
  it("reads text, without a byte order mark", async () => {
    await writeFile(join(folder, "a.json"), "\uFEFF{}");
    expect(await readText(join(folder, "a.json"), "job record")).toBe("{}");
  });

  it("says what is missing", async () => {
    await expect(readText(join(folder, "a.json"), "job record")).rejects.toThrow(
      /^The job record .*a\.json does not exist\. Check the name\.$/,
    );
    await expect(readText(folder, "price book")).rejects.toThrow(
      /^The price book .* cannot be read \(EISDIR\)/,
    );
  });
});
