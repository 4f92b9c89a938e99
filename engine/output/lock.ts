import { constants } from "node:fs";
import {
  access,
  mkdir,
  readdir,
  rename,
  rm,
  rmdir,
  stat,
  utimes,
  writeFile,
} from "node:fs/promises";
import { basename, dirname, join } from "node:path";
import { RillbookError } from "../errors.js";
import { newPartName, ownerLives, sweep } from "./part-file.js";
import { unwritable } from "./system-error.js";
import type { Target } from "./target.js";

/** A holder that gives no sign of life for so long stands still, or its machine is gone. */
const staleAfterMs = 10_000;
const signOfLifeMs = 2_000;
/** How long to wait for others, unless told otherwise. */
const patienceMs = 20_000;
const waits = { least: 10, most: 150 };

/**
 * A lock on a file: the folder `NAME.lock` beside it, which is free while it is empty. In it lies
 * the part that will take the file's place, under a name that nobody else uses. So the step that
 * puts the part in place fails by itself where the lock was taken away meanwhile, however long
 * this run stood still and between whichever two steps; and the same step frees the lock.
 */
export interface Lock {
  /** Where to write the new content; an empty file as long as the lock is held. Never to be made anew. */
  readonly part: string;
  release(): Promise<void>;
}

/** Throws RillbookError where others keep the lock for longer than the patience. */
export async function lockOn(target: Target, patience = patienceMs): Promise<Lock> {
  const folder = `${target.path}.lock`;
  const own = newPartName();
  const until = Date.now() + patience;
  // asked first, since the lock would be tried for again and again
  await access(dirname(target.path), constants.W_OK).catch((error: unknown) => {
    throw unwritable(target.asked, error);
  });
  await sweep(dirname(target.path));
  while (!(await taken(folder, own, target))) {
    await clearStale(folder);
    if (Date.now() > until) throw held(target, await holderOf(folder));
    const wait = waits.least + Math.random() * (waits.most - waits.least);
    await new Promise((resolve) => setTimeout(resolve, wait));
  }
  const part = join(folder, own);
  const alive = setInterval(() => {
    const now = new Date();
    utimes(part, now, now).catch(() => undefined);
  }, signOfLifeMs);
  alive.unref();
  return {
    part,
    release: async () => {
      clearInterval(alive);
      await rm(part, { force: true });
      await removeEmpty(folder);
    },
  };
}

/** A folder takes the place of another only where that is empty: the system lets one run win. */
async function taken(folder: string, own: string, { asked, path }: Target): Promise<boolean> {
  const made = join(dirname(path), newPartName());
  try {
    await mkdir(made);
    await writeFile(join(made, own), "");
    await rename(made, folder);
    return true;
  } catch (error) {
    await rm(made, { recursive: true, force: true }).catch(() => undefined);
    const { code = "" } = error as NodeJS.ErrnoException;
    if (code === "ENOTEMPTY" || code === "EEXIST") return false;
    // what some systems say instead
    const there = await stat(folder).catch(() => undefined);
    if ((code === "EPERM" || code === "EACCES") && there?.isDirectory()) return false;
    throw unwritable(asked, error);
  }
}

/** Where another holds the lock by now, the folder is not empty and stays. */
const removeEmpty = (folder: string): Promise<void> => rmdir(folder).catch(() => undefined);

/** Takes a lock away whose holder is dead or gives no sign of life. Its holder can then put nothing in place. */
async function clearStale(folder: string): Promise<void> {
  const holder = await holderOf(folder);
  // some systems let no folder take the place of an empty one
  if (holder === undefined) return removeEmpty(folder);
  const lives = ownerLives(holder);
  if (lives !== false) {
    const seen = await stat(join(folder, holder)).catch(() => undefined);
    if (seen === undefined || Date.now() - seen.mtimeMs < staleAfterMs) return;
  }
  // only this one holder's part: where another has the lock by now, nothing is there to take away
  await rm(join(folder, holder), { force: true }).catch(() => undefined);
}

async function holderOf(folder: string): Promise<string | undefined> {
  const [holder] = await readdir(folder).catch(() => []);
  return holder;
}

function held({ asked, path }: Target, holder: string | undefined): RillbookError {
  const pid = /-(\d+)-[0-9a-f-]{36}\.part$/.exec(holder ?? "")?.[1];
  const by = pid === undefined ? "" : ` (process ${pid})`;
  return new RillbookError(
    "job-locked",
    `${asked} is being changed by another run of this program${by}; ${basename(path)}.lock stands beside it. Nothing was changed. Wait until it is done and try again.`,
  );
}
