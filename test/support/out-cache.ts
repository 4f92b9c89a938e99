import { mkdirSync, readdirSync, rmSync, statSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";

const aDay = 24 * 60 * 60 * 1000;

/** A folder in which tests keep what the next process may use: what they are made from must stand in the names within. */
export const keptIn = (name: string): string =>
  fileURLToPath(new URL(`../../out/cache/${name}`, import.meta.url));

/** Makes the folder, and takes out what nobody wrote for a day: it is of sources that are gone. */
export function sweep(folder: string): void {
  mkdirSync(folder, { recursive: true });
  const before = Date.now() - aDay;
  for (const name of readdirSync(folder)) {
    const path = join(folder, name);
    const state = statSync(path, { throwIfNoEntry: false });
    if (state !== undefined && state.mtimeMs < before)
      rmSync(path, { recursive: true, force: true });
  }
}
