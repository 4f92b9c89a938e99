import { mkdir, symlink, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { expect, test } from "vitest";
import { findFiles } from "../../../engine/rerun/paths.js";
import { folder } from "./old-fence.js";

async function tree(): Promise<string> {
  const into = await folder();
  await mkdir(join(into, "2025/deep"), { recursive: true });
  await mkdir(join(into, ".hidden"));
  const files = ["a.json", "b.XLSX", "c.txt", "2025/d.json", "2025/deep/e.xlsx", ".hidden/f.json"];
  for (const file of [...files, "~$b.xlsx", ".~lock.b.xlsx#"])
    await writeFile(join(into, file), "");
  await symlink(into, join(into, "2025/round"));
  return into;
}

test.each([
  [["."], ["2025/d.json", "2025/deep/e.xlsx", "a.json", "b.XLSX"]],
  [["2025"], ["2025/d.json", "2025/deep/e.xlsx"]],
  [
    ["a.json", ".", "a.json"],
    ["2025/d.json", "2025/deep/e.xlsx", "a.json", "b.XLSX"],
  ],
  [["**/*.json"], ["2025/d.json", "a.json"]],
  [["2025/*.json"], ["2025/d.json"]],
  [["{a,z}.json"], ["a.json"]],
])("%o finds %o", async (named, found) => {
  const into = await tree();
  const paths = await findFiles(
    named.map((name) => join(into, name)),
    [],
  );
  expect(paths).toEqual(found.map((name) => join(into, name)));
});

test("what the run itself reads and writes is left out", async () => {
  const into = await tree();
  const paths = await findFiles([join(into, "a.json"), into], [join(into, "b.XLSX")]);
  expect(paths).not.toContain(join(into, "b.XLSX"));
});

test.each(["nothing.json", "*.ods"])("%s finds nothing and says so", async (name) => {
  const into = await tree();
  await expect(findFiles([join(into, name)], [])).rejects.toThrow(/names no job/);
});
