import { execFileSync } from "node:child_process";
import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { availableParallelism, cpus, loadavg, tmpdir, totalmem } from "node:os";
import { basename, join } from "node:path";
import { fileURLToPath } from "node:url";
import { parseArgs } from "node:util";
import { firstStart, runProgram, runSoffice } from "../office/run-soffice.js";
import { bench } from "./bench.js";
import { measuring } from "./measured.js";
import { shipped } from "./shipped.js";
import { sizes } from "./sizes.js";
import { figure, markdown } from "./table.js";
import { waterfalls } from "./waterfalls.js";

/**
 * `npm run bench -- --size tiny|usual|full [--install] [--write]`: measures the built program, and prints
 * tables; `--write` keeps them in `test/bench/results.md`.
 */
const { values: asked } = parseArgs({
  options: {
    size: { type: "string", default: "usual" },
    install: { type: "boolean", default: false },
    write: { type: "boolean", default: false },
  },
});
const size = sizes[asked.size as keyof typeof sizes];
if (size === undefined) throw new Error(`--size must be one of: ${Object.keys(sizes).join(", ")}`);

const repository = fileURLToPath(new URL("../../../../", import.meta.url));
const folder = await mkdtemp(join(tmpdir(), "rillbook-bench-"));
const git = (...args: string[]) =>
  execFileSync("git", args, { cwd: repository, encoding: "utf8" }).trim();
const changed = git("status", "--porcelain") === "" ? "" : ", with changes";
const load = () => loadavg().map((value) => figure(value, 1))[0];
const begun = performance.now();

let text = `# What a run of the bench measured

\`npm run bench -- --size ${asked.size}${asked.install ? " --install" : ""} --write\`, which wrote this file, at commit ${git("rev-parse", "--short", "HEAD")} of ${git("log", "-1", "--format=%cs")}${changed}.
${cpus()[0]?.model}, ${availableParallelism()} processors, ${figure(totalmem() / 1e9, 0)} GB; Node ${process.version}; load ${load()} at the beginning.
`;
const say = (more: string) => {
  text += `\n${more}`;
  process.stdout.write(`${more}\n`);
};

process.stdout.write(`${text}\n`);
try {
  const tables = bench({
    ...{ folder, size, subject: waterfalls },
    ...{ measured: measuring(join(repository, "dist/engine/cli/main.js")) },
    office: async (files, start) => {
      const to = await mkdtemp(join(folder, "office-"));
      const profile = start === "first" ? firstStart : {};
      await runSoffice(["--convert-to", "xlsx", "--outdir", to, ...files], profile);
    },
    gnumeric: async (file) => {
      const to = join(folder, `gnumeric-${basename(file)}`);
      await runProgram("ssconvert", "gnumeric", ["--recalc", file, to]);
    },
    prices: join(repository, "sheets/demo/office-book.json"),
  });
  for await (const table of tables) say(markdown(table));
  say(markdown(await shipped(repository, asked.install)));
  say(
    `In all ${figure((performance.now() - begun) / 60_000, 1)} minutes; load ${load()} at the end.`,
  );
  if (asked.write) await writeFile(join(repository, "test/bench/results.md"), `${text}\n`);
} finally {
  await rm(folder, { recursive: true, force: true });
}
