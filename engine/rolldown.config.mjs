import { readdirSync, readFileSync } from "node:fs";
import { defineConfig } from "rolldown";

/** What is named by its path: by package.json, for threads, and for imports of template files. */
const entries = [
  "engine/cli/main",
  "engine/index",
  "engine/rerun/worker",
  "engine/stored/build",
  "engine/template/own-imports",
  "sheets/all-templates",
  "sheets/templates/index",
];

/** Threads that need little of the program: each is a file of its own with no more than that, since a thread reads all anew. */
const threads = ["engine/evaluate/judge-thread", "engine/weigh/draw-thread"];

/** Published schemas and demo jobs lie beside the code. */
const data = readdirSync("sheets", { recursive: true, encoding: "utf8" })
  .filter((path) => path.endsWith(".json"))
  .map((path) => `sheets/${path.replaceAll("\\", "/")}`);

/** Does a file stand there, and is it none that runs once it is read? */
const within = (pattern) => (path) => {
  const [, file = ""] = /\/((?:engine|sheets)\/.+)\.ts$/.exec(path) ?? [];
  return pattern.test(file) && !entries.includes(file);
};

/** Together what is mostly read together, so long as it brings no large library along: hyperformula is the judge's. */
const groups = [
  { name: "trade", test: within(/^sheets\//) },
  {
    name: "core",
    test: within(/^engine\/([^/]+|(units|formula|text|template|job|stored|output)\/.+)$/),
  },
  { name: "core", test: within(/^engine\/evaluate\/(?!judge|kept-judge|overrides|calculate$)/) },
  { name: "write", test: within(/^engine\/workbook\/write\/(?!exceljs)/) },
  { name: "read", test: within(/^engine\/workbook\/(read|match)\//) },
];

/** Libraries stay in their packages. */
const common = {
  platform: "node",
  checks: { ineffectiveDynamicImport: false },
  external: /^[^./]/,
};

/**
 * What is named by its path stays where its source stands; all else goes into a few files, so that a command opens some
 * dozens and not a thousand.
 */
const program = {
  ...common,
  input: Object.fromEntries(entries.map((name) => [name, `${name}.ts`])),
  plugins: [
    {
      name: "data",
      buildStart() {
        for (const fileName of data) {
          this.emitFile({ type: "asset", fileName, source: readFileSync(fileName) });
        }
      },
    },
  ],
  output: {
    dir: "dist",
    cleanDir: true,
    entryFileNames: "[name].js",
    codeSplitting: { groups },
    // as deep as the rooms: paths relative to a source hold here too, where they go by the name of a room
    chunkFileNames: "engine/shared/[name].js",
  },
};

const threadFile = (name) => ({
  ...common,
  input: { [name]: `${name}.ts` },
  treeshake: { moduleSideEffects: "no-external" },
  output: { dir: "dist", entryFileNames: "[name].js" },
});

export default defineConfig([program, ...threads.map(threadFile)]);
