import { opendir, stat } from "node:fs/promises";
import { join, normalize, resolve, sep } from "node:path";
import { Minimatch } from "minimatch";
import { RillbookError } from "../errors.js";

const kinds = /\.(json|xlsx)$/i;
/** Spreadsheet programs' lock files, our own temporary files, and everything hidden. */
const passedOver = /^(\.|~\$)/;

/**
 * The files to rerun, sorted and each once: files as named, folders with all below them
 * (.json and .xlsx), patterns such as `jobs/**\/2026-*.json`. Links to folders are not followed.
 * Throws RillbookError for a name or pattern that finds nothing.
 */
export async function findFiles(
  named: readonly string[],
  leaveOut: readonly string[],
): Promise<string[]> {
  const out = new Set(leaveOut.map((path) => resolve(path)));
  const found = new Set<string>();
  for (const name of named) {
    let any = false;
    for await (const path of filesOf(name)) {
      any = true;
      if (!out.has(resolve(path))) found.add(path);
    }
    if (!any) {
      throw new RillbookError(
        "nothing-found",
        `${name} names no job: there is no such file, or no .json or .xlsx in it. Check the path.`,
      );
    }
  }
  return [...found].sort();
}

async function* filesOf(name: string): AsyncGenerator<string> {
  const state = await stat(name).catch(() => undefined);
  if (state?.isDirectory()) {
    yield* below(name, () => true);
  } else if (state !== undefined) {
    yield normalize(name);
  } else if (/[*?[{]/.test(name)) {
    const pattern = new Minimatch(name.split(sep).join("/"), { nonegate: true, nocomment: true });
    yield* below(fixedPart(name), (path) => pattern.match(path.split(sep).join("/")));
  }
}

/** The folder down to which a pattern holds no wildcard. */
function fixedPart(pattern: string): string {
  const parts = pattern.split(/[\\/]/);
  const first = parts.findIndex((part) => /[*?[{]/.test(part));
  const fixed = parts.slice(0, first).join("/");
  return fixed === "" ? (pattern.startsWith("/") ? "/" : ".") : fixed;
}

async function* below(folder: string, wanted: (path: string) => boolean): AsyncGenerator<string> {
  let entries: Awaited<ReturnType<typeof opendir>>;
  try {
    entries = await opendir(folder);
  } catch (error) {
    const code = (error as NodeJS.ErrnoException).code;
    if (code === "ENOENT") return;
    throw new RillbookError(
      "folder-unreadable",
      `The folder ${folder} cannot be read (${code}). Check its permissions.`,
    );
  }
  for await (const entry of entries) {
    if (passedOver.test(entry.name)) continue;
    const path = join(folder, entry.name);
    if (entry.isDirectory()) yield* below(path, wanted);
    else if (kinds.test(entry.name) && wanted(path)) yield path;
  }
}
