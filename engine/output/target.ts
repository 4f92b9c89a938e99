import type { BigIntStats } from "node:fs";
import { lstat, readlink, realpath, stat } from "node:fs/promises";
import { basename, dirname, join, resolve } from "node:path";
import { RillbookError } from "../errors.js";
import { unwritable } from "./system-error.js";

/** The file that a path leads to in the end, which need not exist yet. */
export interface Target {
  /** As asked for, for sentences. */
  readonly asked: string;
  /** Behind all symbolic links. */
  readonly path: string;
  /** Absent where there is no such file yet. */
  readonly state?: BigIntStats;
}

/** As many links in a row as Linux follows. */
const mostLinks = 40;

/**
 * Follows symbolic links of a file and of its folders, also where the last one leads to a
 * file that does not exist yet. Throws RillbookError for a missing folder and for links in a circle.
 */
export async function targetOf(asked: string): Promise<Target> {
  let path = resolve(asked);
  for (let link = 0; link <= mostLinks; link++) {
    const folder = await realFolder(path);
    path = join(folder, basename(path));
    const found = await lstat(path, { bigint: true }).catch(missing);
    if (found === undefined) return { asked, path };
    if (!found.isSymbolicLink()) return { asked, path, state: found };
    // the system knows where /dev/stdout leads, although its text is no path
    const state = await stat(path, { bigint: true }).catch(missing);
    if (state !== undefined && !state.isFile()) return { asked, path, state };
    path = resolve(folder, await readlink(path));
  }
  throw new RillbookError(
    "output-not-writable",
    `${asked} is a link that leads round in a circle. Name another file.`,
  );
}

async function realFolder(path: string): Promise<string> {
  try {
    const folder = await realpath(dirname(path));
    if ((await stat(folder)).isDirectory()) return folder;
  } catch (error) {
    if (!isMissing(error)) throw unwritable(path, error);
  }
  throw folderMissing(path);
}

/** Too long a name is no file either; it is told when the file is written. */
const isMissing = (error: unknown): boolean =>
  ["ENOENT", "ENOTDIR", "ELOOP", "ENAMETOOLONG"].includes(
    (error as NodeJS.ErrnoException).code ?? "",
  );

function missing(error: unknown): undefined {
  if (!isMissing(error)) throw error;
}

function folderMissing(path: string): RillbookError {
  return new RillbookError(
    "folder-missing",
    `The folder ${dirname(path)} does not exist, so ${basename(path)} cannot be written. Make the folder first.`,
  );
}

/** Do the target and a path lead to one file: by links of either kind, or by letter case? */
export async function isSameFile({ path, state }: Target, other: string): Promise<boolean> {
  if (state === undefined) return false;
  const there = await stat(other, { bigint: true }).catch(() => undefined);
  if (there === undefined) return false;
  if (state.ino !== 0n) return there.dev === state.dev && there.ino === state.ino;
  // some file systems number no files; the real path has the letter case of the folder's entry
  const [here, beyond] = await Promise.all(
    [path, other].map((one) => realpath(one).catch(() => one)),
  );
  return here === beyond;
}

/** Is the file still the one that was looked at, with nothing written to it since? */
export const unchangedSince = (one?: BigIntStats, other?: BigIntStats): boolean =>
  one?.dev === other?.dev &&
  one?.ino === other?.ino &&
  one?.size === other?.size &&
  one?.mtimeNs === other?.mtimeNs &&
  one?.ctimeNs === other?.ctimeNs;
