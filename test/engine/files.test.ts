import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { readText } from "../../engine/files.js";

let folder: string;
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), "rillbook-files-"));
});
afterEach(() => rm(folder, { recursive: true }));

describe("readText", () => {
  it("reads text, without a byte order mark", async () => {
    await writeFile(join(folder, "a.json"), "\uFEFF{}");
    expect(await readText(join(folder, "a.json"), "job record")).toBe("{}");
  });

  it("says what is missing", async () => {
    await expect(readText(join(folder, "a.json"), "job record")).rejects.toThrow(
      /^The job record .*a\.json does not exist\. Check the name\.$/,
    );
    await expect(readText(folder, "office book")).rejects.toThrow(
      /^The office book .* is a folder, not a file\. Name a file\.$/,
    );
  });
});
