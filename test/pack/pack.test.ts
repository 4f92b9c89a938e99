import { execFileSync } from "node:child_process";
import {
  appendFileSync,
  existsSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { repository } from "../house/repository.js";
import { exampleTests } from "./example.js";
import { filesBelow, installed } from "./installed.js";
import { tutorialTests } from "./tutorial.js";

let folder: string;

// npm tells what it starts where the project lies; here that would be the wrong project.
const { npm_config_local_prefix, INIT_CWD, ...env } = process.env;

const run = (program: string, args: readonly string[], cwd = folder) =>
  execFileSync(program, args, { cwd, env, encoding: "utf8", stdio: "pipe" });

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), "rillbook-pack-"));
  installed(folder, run);
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

test("the packed tool starts where only its package is installed", () => {
  expect(run("npx", ["--no-install", "rillbook", "--help"])).toMatch(/^Usage: rillbook /m);
});

test("the package holds the built tool and its data, and no tests or sources", () => {
  const packed = filesBelow(join(folder, "node_modules/rillbook"));
  const data = filesBelow(join(repository, "sheets")).filter((f) => f.endsWith(".json"));
  expect(packed).toEqual(expect.arrayContaining(data.map((f) => `dist/sheets/${f}`)));
  const sources = packed.filter((f) => /(?<!\.d)\.ts$/.test(f) || /(^|\/)test(\/|$)/.test(f));
  expect(sources).toEqual([]);
});

test("every type that the exports name is in the package", () => {
  const home = join(folder, "node_modules/rillbook");
  const { exports } = JSON.parse(readFileSync(join(home, "package.json"), "utf8"));
  const entries = Object.values<{ types?: string }>(exports).flatMap(({ types }) => types ?? []);
  const reached = new Set<string>();
  const reach = (path: string): void => {
    if (reached.has(path)) return;
    reached.add(path);
    const declared = readFileSync(path, "utf8");
    for (const [, from = ""] of declared.matchAll(/(?:from |import\(|import )"(\.[^"]+)"/g)) {
      reach(join(path, "..", from.replace(/\.js$/, ".d.ts")));
    }
  };
  for (const entry of entries) reach(join(home, entry));
  expect(entries).toHaveLength(2);
  expect(reached.size).toBeGreaterThan(50);
});

test("the package brings its compiled models, and compiles none where it is used", () => {
  const cache = join(folder, "cache");
  const home = join(folder, "node_modules/rillbook/dist");
  const names = () =>
    execFileSync(process.execPath, [join(home, "engine/cli/main.js"), "names"], {
      cwd: folder,
      env: { ...env, XDG_CACHE_HOME: cache },
      encoding: "utf8",
      maxBuffer: 1e8,
    });
  const packed = names();
  expect(existsSync(cache)).toBe(false);
  // an edit of what compiles them makes them stale: they are compiled again, to the same end
  const [shared = ""] = readdirSync(join(home, "engine/shared"));
  appendFileSync(join(home, "engine/shared", shared), "\n// edited\n");
  expect(names()).toBe(packed);
  expect(readdirSync(join(cache, "rillbook"))).toEqual(["waterfall-1.us.model"]);
});

exampleTests(() => folder, run);
tutorialTests(() => folder);
