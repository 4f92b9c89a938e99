import { readdirSync } from "node:fs";
import { expect, test } from "vitest";
import { repository } from "./repository.js";

const allowed = new Set([
  ...["engine", "sheets", "test", "dist", "node_modules", ".git", ".ci"],
  ...["README.md", "DEVELOPERS.md", "LICENSE", "package.json", "package-lock.json"],
  ...["tsconfig.json", "biome.json", ".gitignore"],
]);

// What the commands of the README leave behind; .gitignore names the same.
const leftBehind = /^(out|.*\.tgz|.*\.xlsx)$/;

test("the top level holds only what belongs there", () => {
  const strangers = readdirSync(repository).filter((f) => !allowed.has(f) && !leftBehind.test(f));
  expect(strangers, "move these into engine/, sheets/ or test/, or delete them").toEqual([]);
});
