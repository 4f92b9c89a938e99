import { expect, test } from "vitest";
import { sourcesIn, textOf } from "./imports.js";

/** What a built file names by its path: threads, hooks, the module of templates. */
const named = sourcesIn(["engine", "sheets"]).flatMap((file) =>
  [...textOf(file).matchAll(/new URL\(\s*"([^"]+\.js)",\s*import\.meta\.url/g)].map(
    ([, path = ""]) => ({ file, path }),
  ),
);
const entries = [
  ...textOf("engine/rolldown.config.mjs").matchAll(/^const (?:entries|threads) = \[([^\]]*)\];$/gm),
].flatMap(([, list = ""]) => [...list.matchAll(/"([^"]+)"/g)].map(([, entry = ""]) => entry));

test("what the program names by its path is built as a file of its own", () => {
  expect(named.length).toBeGreaterThan(3);
  const lacking = named.filter(({ path }) => {
    const file = path.replace(/^\.\.\/\.\.\//, "").replace(/^\.\.\//, "engine/");
    return !entries.includes(file.replace(/\.js$/, ""));
  });
  expect(lacking, "name these among the entries of engine/rolldown.config.mjs").toEqual([]);
});

test("such a path goes by the name of a room, since built files that are shared stand in another one", () => {
  expect(
    named.filter(({ path }) => !/^\.\.\/[a-z]/.test(path) && !/^\.\.\/\.\.\/sheets\//.test(path)),
  ).toEqual([]);
});

test("what package.json starts and exports is built as a file of its own", () => {
  const { bin, exports } = JSON.parse(textOf("package.json"));
  const files = [
    ...Object.values<string>(bin),
    ...Object.values<{ default?: string }>(exports).flatMap((one) => one.default ?? []),
  ];
  expect(files).toHaveLength(3);
  for (const file of files) {
    expect(entries).toContain(file.replace(/^(\.\/)?dist\//, "").replace(/\.js$/, ""));
  }
});
