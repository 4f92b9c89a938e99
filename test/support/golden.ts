import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { expect } from "vitest";
import { repository } from "../house/repository.js";

/** Holds a text that is made from the code against its file; writes the file where UPDATE_GOLDEN is set. */
export function expectGolden(file: string, made: string): void {
  const path = join(repository, file);
  if (process.env.UPDATE_GOLDEN) writeFileSync(path, made);
  expect(readFileSync(path, "utf8"), `${file}: run with UPDATE_GOLDEN=1 after a change`).toBe(made);
}

/** A table in Markdown. */
export function markdownTable(
  heads: readonly string[],
  rows: readonly (readonly string[])[],
): string {
  const line = (cells: readonly string[]) =>
    `| ${cells.map((cell) => cell.replaceAll("|", "\\|").replaceAll("\n", " ")).join(" | ")} |`;
  return [line(heads), line(heads.map(() => "---")), ...rows.map(line)].join("\n");
}
