import { existsSync, readFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

/** The version of the program, as its package says. */
export function programVersion(): string {
  // compiled, this file lies one folder deeper than its source
  for (let folder = dirname(fileURLToPath(import.meta.url)); ; folder = dirname(folder)) {
    const path = join(folder, "package.json");
    if (existsSync(path)) {
      const { name, version } = JSON.parse(readFileSync(path, "utf8"));
      if (name === "rillbook") return version;
    }
    if (folder === dirname(folder)) return "unknown";
  }
}
