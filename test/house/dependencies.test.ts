import { expect, test } from "vitest";
import { textOf } from "./repository.js";

// Both round, name and write in ways that our own code makes up for: an upgrade needs a look.
test.each(["hyperformula", "exceljs"])("%s is pinned to one version", (name) => {
  expect(JSON.parse(textOf("package.json")).dependencies[name]).toMatch(/^\d+\.\d+\.\d+$/);
});

test("the lock file ties nobody to one registry", () => {
  const packages: Record<string, object> = JSON.parse(textOf("package-lock.json")).packages;
  const tied = Object.keys(packages).filter((path) => "resolved" in (packages[path] as object));
  expect(tied, "run npm install with --omit-lockfile-registry-resolved").toEqual([]);
  expect(Object.keys(packages).length).toBeGreaterThan(10);
});
