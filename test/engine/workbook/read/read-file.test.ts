import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { readWorkbookFile } from "../../../../engine/workbook/read/read-file.js";
import { workbook } from "./build.js";

let folder: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), "rillbook-read-"));
  writeFileSync(join(folder, "good.xlsx"), workbook());
  writeFileSync(join(folder, "text.xlsx"), "a,b\n");
});
afterAll(() => rmSync(folder, { recursive: true }));

test("a file is read", async () => {
  const content = await readWorkbookFile(join(folder, "good.xlsx"));
  expect(content.sheets[0]?.cells.get("A1")).toEqual({ value: 1 });
});

test.each([
  ["missing.xlsx", "workbook-file", "no such file"],
  ["good.xlsx/inner.xlsx", "workbook-file", "no such file"],
  ["", "workbook-file", "not a file"],
  ["text.xlsx", "workbook-kind", "plain text"],
])("%j is refused by path", async (name, code, says) => {
  const path = join(folder, name);
  await expect(readWorkbookFile(path)).rejects.toMatchObject({
    code,
    exitStatus: 2,
    message: expect.stringMatching(new RegExp(`^.*${says}`)),
  });
  await expect(readWorkbookFile(path)).rejects.toThrow(path);
});

test("a file over the limit is refused by its size on disk", async () => {
  const reading = readWorkbookFile(join(folder, "text.xlsx"), { limits: { fileBytes: 3 } });
  await expect(reading).rejects.toThrow("has 4 bytes; at most 3");
});
