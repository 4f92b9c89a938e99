import { randomUUID } from "node:crypto";
import { constants } from "node:fs";
import { access, open, readFile, rename, stat, unlink } from "node:fs/promises";
import { basename, dirname, join, resolve } from "node:path";
import { RillbookError } from "./errors.js";

/**
 * Writes a file so that its old content stays whole until the new one is complete:
 * to a temporary file beside it, flushed to the disk, then renamed over it.
 * Throws RillbookError where the folder is missing, the file is open elsewhere or not writable.
 */
export async function writeWhole(path: string, content: Uint8Array | string): Promise<void> {
  const target = resolve(path);
  await mustBeWritable(target);
  const temporary = join(dirname(target), `.rillbook-${randomUUID()}.part`);
  try {
    const handle = await open(temporary, "wx");
    try {
      await handle.writeFile(content);
      await handle.sync();
    } finally {
      await handle.close();
    }
    await rename(temporary, target);
  } catch (error) {
    await unlink(temporary).catch(() => undefined);
    throw unwritable(target, error);
  }
}

/** Throws RillbookError where a file cannot be written: no folder, a folder itself, open elsewhere. */
export async function mustBeWritable(target: string): Promise<void> {
  const folder = dirname(target);
  const folderState = await stat(folder).catch(() => undefined);
  if (!folderState?.isDirectory()) {
    throw new RillbookError(
      "folder-missing",
      `The folder ${folder} does not exist, so ${basename(target)} cannot be written. Make the folder first.`,
    );
  }
  const state = await stat(target).catch(() => undefined);
  if (state?.isDirectory()) {
    throw new RillbookError(
      "output-is-folder",
      `${target} is a folder, not a file. Name a file in it.`,
    );
  }
  const lock = await openElsewhere(target);
  if (lock !== undefined) {
    throw new RillbookError(
      "output-open",
      `${target} is open in a spreadsheet (${lock} stands beside it). Close it there, or write to another file.`,
    );
  }
  if (state !== undefined) {
    await access(target, constants.W_OK).catch((error: unknown) => {
      throw unwritable(target, error);
    });
  }
}

/** Spreadsheet programs leave a file beside the one they have open: `.~lock.NAME#` or `~$NAME`. */
async function openElsewhere(target: string): Promise<string | undefined> {
  const name = basename(target);
  for (const lock of [`.~lock.${name}#`, `~$${name}`, `~$${name.slice(2)}`]) {
    const found = await stat(join(dirname(target), lock)).catch(() => undefined);
    if (found !== undefined) return lock;
  }
  return undefined;
}

function unwritable(target: string, error: unknown): RillbookError {
  if (error instanceof RillbookError) return error;
  const reason = (error as NodeJS.ErrnoException).code ?? String(error);
  return new RillbookError(
    "output-not-writable",
    `${target} cannot be written (${reason}). Close it if it is open, or write to another file.`,
  );
}

/** Reads a text file; throws RillbookError where it is missing or cannot be read. */
export async function readText(path: string, what: string): Promise<string> {
  try {
    // some editors put a byte order mark first, which no text begins with
    return (await readFile(path, "utf8")).replace(/^\uFEFF/, "");
  } catch (error) {
    const reason = (error as NodeJS.ErrnoException).code;
    throw new RillbookError(
      "file-unreadable",
      reason === "ENOENT"
        ? `The ${what} ${path} does not exist. Check the name.`
        : `The ${what} ${path} cannot be read (${reason}).`,
    );
  }
}
