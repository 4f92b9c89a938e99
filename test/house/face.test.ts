import { dirname, join } from "node:path";
import { expect, test } from "vitest";
import { textOf } from "./imports.js";

/** What a file loads with it: relative files, and packages by name. Types, and what is loaded when called, are left out. */
function loadedWith(file: string): string[] {
  return [...textOf(file).matchAll(/^(?:import|export) (?!type )[^;]*?from "([^"]+)";/gm)].map(
    ([, to = ""]) => (to.startsWith(".") ? join(dirname(file), to).replace(/\.js$/, ".ts") : to),
  );
}

function loadedByAll(first: string): Set<string> {
  const found = new Set<string>();
  const visit = (file: string): void => {
    if (found.has(file)) return;
    found.add(file);
    if (file.endsWith(".ts")) for (const one of loadedWith(file)) visit(one);
  };
  visit(first);
  return found;
}

test("importing the package loads what declares, and none of the libraries", () => {
  const found = loadedByAll("engine/index.ts");
  expect([...found].filter((one) => !one.endsWith(".ts"))).toEqual(["fastest-levenshtein"]);
  expect(found).toContain("engine/template/declare.ts");
  expect(found).not.toContain("engine/template/compile.ts");
});
