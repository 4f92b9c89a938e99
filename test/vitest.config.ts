import { readdirSync, readFileSync } from "node:fs";
import { join, relative } from "node:path";
import { configDefaults, defineConfig, type ViteUserConfig } from "vitest/config";
import { flagOf } from "../engine/cli/compile-less.js";
import LongestFirst from "./sequence.js";
import { keptIn, sweep } from "./support/out-cache.js";

const root = new URL("..", import.meta.url).pathname;

// programs that tests start keep compiled models here, not in the home of whoever runs them
process.env.XDG_CACHE_HOME = join(root, "out/cache");

const modules = keptIn("modules");
sweep(modules);

const testFiles = readdirSync(join(root, "test"), { recursive: true, encoding: "utf8" })
  .filter((name) => name.endsWith(".test.ts"))
  .map((name) => relative(root, join(root, "test", name)));

// They put modules of their own in place of others, or say in a comment why they have to, so they get a process
// each. All others share one a worker: what it imported and compiled once serves the next file too.
const alone = testFiles.filter((name) =>
  /vi\.mock\(|^\/\/ A process of its own: /m.test(readFileSync(join(root, name), "utf8")),
);

const setupFiles = [
  "test/kept-models.ts",
  ...(process.env.TEST_CPU ? ["test/cpu-by-file.ts"] : []),
];

// Young space, MB: what a model and the judge's sheets are built from lives on, and is copied less often so. And V8
// optimizes code as late as in the program itself. A tenth to a fifth less processor time in tests that do much of both.
const late = flagOf(process.versions.v8);
const execArgv = ["--max-semi-space-size=64", ...(late === undefined ? [] : [late])];

// Later releases of Node list modules that have no name without "node:", which nothing here imports. vitest puts the
// list into the digest by which it keeps what it made of a source: by it, what one release made did not serve the next.
const plugins: ViteUserConfig["plugins"] = [
  {
    name: "same-digest-under-each-node",
    configResolved({ environments }) {
      for (const { resolve } of Object.values(environments)) {
        if (Array.isArray(resolve.external)) {
          resolve.external = resolve.external.filter(
            (name) => !/^(node:)+(sea|sqlite|test)\b/.test(name),
          );
        }
      }
    },
  },
];

const slow = (name: string, seconds: number) => ({
  plugins,
  test: {
    name,
    root,
    setupFiles,
    execArgv,
    include: [`test/${name}/**/*.test.ts`],
    testTimeout: seconds * 1000,
    hookTimeout: seconds * 1000,
    isolate: false,
  },
});

// Continuous integration reads its counts from here.
const report = process.env.TEST_REPORT;

export default defineConfig({
  test: {
    root,
    // one more than the usual: no test goes by a clock, and a machine with two cores has both at work
    maxWorkers: "100%",
    // what a run made of a source serves the next one, by a digest of its text: those under later releases of Node begin so
    experimental: { fsModuleCache: true, fsModuleCachePath: modules },
    sequence: { sequencer: LongestFirst },
    reporters: report ? ["default", ["json", { outputFile: report }]] : ["default"],
    projects: [
      // Parallel is safe here: every call of LibreOffice has a profile of its own.
      slow("office", 120),
      slow("network", 120),
      slow("pack", 240),
      {
        plugins,
        test: {
          name: "unit",
          root,
          setupFiles,
          execArgv,
          include: ["test/**/*.test.ts"],
          exclude: [...configDefaults.exclude, "test/{office,network,pack}/**", ...alone],
          testTimeout: 60_000,
          hookTimeout: 60_000,
          isolate: false,
        },
      },
      {
        plugins,
        test: {
          name: "unit-alone",
          root,
          setupFiles,
          execArgv,
          include: alone,
          testTimeout: 60_000,
          hookTimeout: 60_000,
        },
      },
    ],
  },
});
