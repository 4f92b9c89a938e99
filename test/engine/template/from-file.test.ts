import { execFileSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, expect, test } from "vitest";
import { run } from "../../../engine/cli/run.js";
import { RillbookError } from "../../../engine/errors.js";
import { isTemplateFile, templatesFrom } from "../../../engine/template/from-file.js";
import { fence } from "../../support/fence.js";

const folder = mkdtempSync(join(tmpdir(), "rillbook-own-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

function file(name: string, text: string): string {
  const path = join(folder, name);
  writeFileSync(path, text);
  return path;
}

const bare = (name: string) =>
  `{ name: "${name}", version: 1, title: "T", sheets: [], formulas: [], headline: [] }`;

test.each([
  ["a file that is not there", "none.mjs", undefined, /none\.mjs does not exist/],
  [
    "a file that exports nothing",
    "nothing.mjs",
    "const a = 1;",
    /exports nothing, but no template/,
  ],
  ["a file that exports something else", "other.mjs", "export const prices = 1;", /exports prices/],
  [
    "what is no template",
    "no.mjs",
    "export default { name: 'Our' };",
    /lacks name.*version.*title/,
  ],
  ["a file that is no JavaScript", "broken.mjs", "export default {", /cannot be loaded: \w*Error/],
  [
    "a file that fails as it runs",
    "fails.mjs",
    "throw new Error('x');",
    /cannot be loaded: Error: x/,
  ],
  ["TypeScript", "own.ts", "export default 1;", /is TypeScript, which is compiled first/],
])("%s is refused with what to do", async (_, name, text, words) => {
  const path = text === undefined ? join(folder, name) : file(name, text);
  await expect(templatesFrom(path)).rejects.toThrow(words);
  await expect(templatesFrom(path)).rejects.toBeInstanceOf(RillbookError);
});

test("a pipe is refused and not waited for", async () => {
  execFileSync("mkfifo", [join(folder, "pipe.mjs")]);
  await expect(templatesFrom(join(folder, "pipe.mjs"))).rejects.toThrow(
    /pipe\.mjs is no file, but/,
  );
});

test.each([
  ["the default export", `export default ${bare("a")};`, ["a"]],
  ["a list", `export default [${bare("a")}, ${bare("b")}];`, ["a", "b"]],
  ["by name", `export const templates = [${bare("a")}];\nexport const more = 1;`, ["a"]],
  ["one twice", `export const template = ${bare("a")};\nexport default template;`, ["a"]],
])("templates are exported as %s", async (what, text, names) => {
  const found = await templatesFrom(file(`${what.replaceAll(" ", "-")}.mjs`, text));
  expect(found.map(({ name }) => name)).toEqual(names);
  expect(found[0]?.own?.file).toMatch(/\.mjs$/);
});

test.each([
  ["waterfall", false],
  ["own.mjs", true],
  ["./templates/own.js", true],
  ["..\\own.js", true],
])("%s as a file: %s", (given, is) => expect(isTemplateFile(given)).toBe(is));

async function told(...args: readonly string[]) {
  let [out, err] = ["", ""];
  const status = await run(args, [fence], {
    out: (text) => {
      out += text;
    },
    err: (text) => {
      err += text;
    },
  });
  return { status, out, err };
}

test("a name and version that are there already are refused", async () => {
  const text = bare("fence").replace("version: 1", "version: 3");
  const path = file("taken.mjs", `export default ${text};`);
  const { status, err } = await told("names", "--template", path);
  expect([status, err]).toEqual([2, expect.stringMatching(/^template-taken: .*fence, version 3/)]);
});

test("a name where a command takes a file is refused", async () => {
  const { status, err } = await told("show", "job.json", "--template", "fence");
  expect([status, err]).toEqual([2, expect.stringMatching(/^template-file: .*takes a file there/)]);
});

test("help tells that a file may be given", async () => {
  expect((await told("show", "--help")).out).toMatch(/--template <file>/);
  expect((await told("start", "--help")).out).toMatch(/or a\s+file\s+\(\.js,\s+\.mjs\)/);
});
