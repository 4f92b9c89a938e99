import { spawnSync } from "node:child_process";
import { cpSync, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { runSoffice } from "../office/run-soffice.js";

/**
 * `npm run bench:commands -- 5`: whole processes of the built program (`npm run build` first) on the
 * largest demo, each beside LibreOffice's conversion of the same bid in the same round, so that both meet
 * the same load (LibreOffice with a new profile each time, as in the tests). Prints the median of the rounds as seconds and as a ratio; asserts nothing.
 */
const [rounds = 3] = process.argv.slice(2).map(Number);
const repository = fileURLToPath(new URL("../../../../", import.meta.url));
const program = join(repository, "dist/engine/cli/main.js");
const folder = mkdtempSync(join(tmpdir(), "rillbook-bench-"));
const job = join(folder, "demo/hillside-stream.json");
const bid = join(folder, "bid.xlsx");

const commands: Readonly<Record<string, readonly string[]>> = {
  bid: ["bid", job, "-o", bid],
  show: ["show", job, "price"],
  trace: ["trace", job, "price"],
  set: ["set", job, "crew_size=4", "--by", "Bench", "--from", "assumption"],
  names: ["names"],
  start: ["start", join(folder, "new.json")],
};

const seconds = async (work: () => unknown): Promise<number> => {
  const begin = process.hrtime.bigint();
  await work();
  return Number(process.hrtime.bigint() - begin) / 1e9;
};

function run(args: readonly string[]): void {
  const { status, stderr } = spawnSync(process.execPath, [program, ...args], { encoding: "utf8" });
  // 1: a bid that does not stand, which is written all the same
  if (status !== 0 && status !== 1) throw new Error(`${args[0]} ended with ${status}: ${stderr}`);
}

const median = (values: readonly number[]): number =>
  [...values].sort((a, b) => a - b)[values.length >> 1] as number;

try {
  cpSync(join(repository, "sheets/demo"), join(folder, "demo"), { recursive: true });
  const taken = new Map(Object.keys(commands).map((name) => [name, [] as number[]]));
  const ratios = new Map(Object.keys(commands).map((name) => [name, [] as number[]]));
  const office: number[] = [];
  run(commands.bid as readonly string[]);
  for (let round = 0; round < rounds; round++) {
    const convert = ["--convert-to", "xlsx", "--outdir", join(folder, "office"), bid];
    const converted = await seconds(() => runSoffice(convert));
    office.push(converted);
    for (const [name, args] of Object.entries(commands)) {
      rmSync(join(folder, "new.json"), { force: true });
      if (name === "bid") rmSync(bid, { force: true });
      const own = await seconds(() => run(args));
      taken.get(name)?.push(own);
      ratios.get(name)?.push(own / converted);
    }
  }
  process.stdout.write(`LibreOffice's conversion: ${median(office).toFixed(2)} s\n`);
  for (const [name, own] of taken) {
    const ratio = median(ratios.get(name) ?? []);
    process.stdout.write(`${name}: ${median(own).toFixed(2)} s, ${ratio.toFixed(2)} of it\n`);
  }
} finally {
  rmSync(folder, { recursive: true, force: true });
}
