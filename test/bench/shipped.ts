import { execFile } from "node:child_process";
import { mkdtemp, readFile, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { promisify } from "node:util";
import { figure, type Table } from "./table.js";

const run = promisify(execFile);

interface Pack {
  readonly size: number;
  readonly unpackedSize: number;
  readonly entryCount: number;
}

/** What the package weighs, as npm would pack the folder; `install` adds the way from a clone to the first bid. */
export async function shipped(repository: string, install: boolean): Promise<Table> {
  const { stdout } = await run("npm", ["pack", "--dry-run", "--json", "--ignore-scripts"], {
    cwd: repository,
  });
  const [pack] = JSON.parse(stdout) as [Pack];
  const { version } = JSON.parse(await readFile(join(repository, "package.json"), "utf8"));
  return {
    title: "The package",
    note: `Version ${version}, without its dependencies${install ? "; `npm ci` builds it, with what npm holds in its cache" : ""}.`,
    heads: ["What", "figure"],
    rows: [
      ["packed, MB", figure(pack.size / 1e6)],
      ["unpacked, MB", figure(pack.unpackedSize / 1e6)],
      ["files", figure(pack.entryCount, 0)],
      ...(install
        ? [["from `npm ci` to the first bid, s", figure(await firstBid(repository))]]
        : []),
    ],
  };
}

async function firstBid(repository: string): Promise<number> {
  const folder = await mkdtemp(join(tmpdir(), "rillbook-bench-clone-"));
  try {
    await run("git", ["clone", "--quiet", repository, folder]);
    const begun = performance.now();
    await run("npm", ["ci"], { cwd: folder, maxBuffer: 1e8 });
    const bid = [
      "dist/engine/cli/main.js",
      "bid",
      "sheets/demo/garden-corner.json",
      "-o",
      "bid.xlsx",
    ];
    await run(process.execPath, bid, { cwd: folder });
    return (performance.now() - begun) / 1000;
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}
