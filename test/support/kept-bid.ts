import { createHash, randomUUID } from "node:crypto";
import { readdir, readFile, rename, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { digestOf } from "../../engine/stored/mark.js";
import { keptIn, sweep } from "./out-cache.js";

const root = fileURLToPath(new URL("../..", import.meta.url));
const folder = keptIn("bids");

let sources: string | undefined;

/** A digest of all that a demo's bid is made from: the code, the sheets, the demos and books, and the libraries. */
async function sourcesMark(): Promise<string> {
  if (sources !== undefined) return sources;
  const hash = createHash("sha256").update(digestOf(root, ["engine", "sheets"]));
  const demos = (await readdir(join(root, "sheets/demo"))).filter((name) => name.endsWith(".json"));
  for (const name of [...demos.sort().map((one) => `sheets/demo/${one}`), "package-lock.json"]) {
    hash.update(name).update(await readFile(join(root, name)));
  }
  sources = hash.digest("hex").slice(0, 24);
  return sources;
}

/**
 * The bytes of a demo's bid, which the first process that asks makes and keeps for all others, as long as nothing
 * changes of what it is made from.
 *
 * @param make makes them, held by both evaluators
 */
export async function keptBid(name: string, make: () => Promise<Uint8Array>): Promise<Uint8Array> {
  const path = join(folder, `${name}-${await sourcesMark()}.xlsx`);
  const kept = await readFile(path).catch(() => undefined);
  if (kept !== undefined) return new Uint8Array(kept);
  const bytes = await make();
  sweep(folder);
  const part = `${path}.${randomUUID()}.part`;
  await writeFile(part, bytes);
  await rename(part, path);
  return bytes;
}
