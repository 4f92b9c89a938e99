import { link, lstat, rename, rm, stat, writeFile } from "node:fs/promises";
import { RillbookError } from "../errors.js";
import { judged, type Plan } from "./judge.js";
import { partBeside, settled } from "./part-file.js";
import { unwritable } from "./system-error.js";
import { type Target, unchangedSince } from "./target.js";

/** A file that a command is going to write, looked at before the work begins. */
export interface Output {
  /**
   * Puts the content in place: to a part beside the file, flushed to the disk, renamed over it.
   * A reader finds the old content or the new one, never a piece; mode and owner stay.
   * Throws RillbookError as `outputTo` does, and where the disk is full or the system refuses.
   */
  write(content: Uint8Array | string): Promise<void>;
  /** The same, where the content is written to the part piece by piece. */
  writeWith(fill: (part: string) => Promise<void>): Promise<void>;
}

/** Throws RillbookError where a file must not be written: see `judged`. Long work need not begin then. */
export async function outputTo(path: string, plan: Plan): Promise<Output> {
  const seen = await judged(path, plan);
  const writeWith = (fill: (part: string) => Promise<void>) =>
    inParts(seen, async (part) => {
      await fill(part);
      const target = await lookedAtAgain(path, seen, plan);
      await settled(part, target);
      await rename(part, target.path);
    });
  return { writeWith, write: (content) => writeWith((part) => writeFile(part, content)) };
}

/**
 * Writes a file that must not exist yet. Throws RillbookError as `outputTo` does, and where it exists.
 * @param mode who may read and write it; from the first moment on
 */
export async function writeNew(
  path: string,
  plan: Plan,
  content: Uint8Array | string,
  mode = 0o666,
): Promise<void> {
  await mustBeNew(path);
  const target = await judged(path, plan);
  await inParts(target, async (part) => {
    await writeFile(part, content, { mode });
    await settled(part, target);
    await placedNew(part, target.path, path);
  });
}

/** Throws RillbookError where something stands under the path already; a link that leads nowhere does not count. */
export async function mustBeNew(path: string): Promise<void> {
  if ((await stat(path).catch(() => undefined)) !== undefined) throw exists(path);
}

const exists = (path: string): RillbookError =>
  new RillbookError(
    "file-exists",
    `${path} exists already and is left as it is. Name another file.`,
  );

/** A link is made only where nothing stands, also where it came to stand meanwhile. */
export async function placedNew(part: string, path: string, asked: string): Promise<void> {
  try {
    await link(part, path);
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException;
    if (code === "EEXIST") throw exists(asked);
    // not every file system has links of this kind
    if (code !== "EPERM" && code !== "ENOTSUP" && code !== "ENOSYS") throw error;
    await mustBeNew(path);
    await rename(part, path);
    return;
  }
  await rm(part);
}

/** The file may have been saved by somebody while the content was worked out. */
async function lookedAtAgain(path: string, seen: Target, plan: Plan): Promise<Target> {
  const now = await lstat(seen.path, { bigint: true }).catch(() => undefined);
  return unchangedSince(seen.state, now) ? seen : judged(path, plan);
}

/** Does some work with a part beside the target, and leaves none behind. */
async function inParts(target: Target, work: (part: string) => Promise<void>): Promise<void> {
  const part = await partBeside(target);
  try {
    await work(part);
  } catch (error) {
    await rm(part, { force: true }).catch(() => undefined);
    throw unwritable(target.asked, error);
  }
}
