import { open, readFile, rename } from "node:fs/promises";
import { RillbookError } from "../errors.js";
import { isInput, mustBeFile, mustBeFree } from "./judge.js";
import type { OutputKind } from "./kind.js";
import { type Lock, lockOn } from "./lock.js";
import { settled } from "./part-file.js";
import { unwritable } from "./system-error.js";
import { isSameFile, type Target, targetOf } from "./target.js";
import { placedNew } from "./write.js";

/** What a change makes of a file: its new content, and what the caller wants to know of it. */
export interface Changed<T> {
  readonly content: string | Uint8Array;
  readonly result: T;
}

/**
 * Changes a text file, or makes it, while no other run of this program changes it: reads it, has
 * its new content made, and puts that in place only where the file is still what was read. Mode
 * and owner stay. Throws RillbookError where another run or program was in between, with nothing lost.
 * @param make gets the old text, undefined where there is no such file yet
 * @param inputs paths of the other files that the command reads
 */
export const changeFile = <T>(
  asked: string,
  make: (old: string | undefined) => Changed<T> | Promise<Changed<T>>,
  inputs: readonly string[] = [],
): Promise<T> =>
  changeBytes(asked, "record", (old) => make(old?.toString("utf8").replace(/^\uFEFF/, "")), inputs);

/** The same for a file of any kind, by its bytes. */
export async function changeBytes<T>(
  asked: string,
  kind: OutputKind,
  make: (old: Buffer | undefined) => Changed<T> | Promise<Changed<T>>,
  inputs: readonly string[],
): Promise<T> {
  const target = await targetOf(asked);
  for (const input of inputs) {
    if (await isSameFile(target, input)) throw isInput(asked, input, kind);
  }
  const lock = await lockOn(target);
  try {
    // looked at again: the run before may have made it
    const now = await targetOf(target.path);
    await mustBeFile({ ...now, asked });
    if (now.state !== undefined) await mustBeFree({ ...now, asked });
    const old = await bytesOf(now);
    const { content, result } = await make(old);
    await put(lock, { ...now, asked }, old, content);
    return result;
  } catch (error) {
    throw isOfSystem(error) ? unwritable(asked, error) : error;
  } finally {
    await lock.release();
  }
}

/** An error of the system carries a number; a fault of the program stays what it is. */
const isOfSystem = (error: unknown): boolean =>
  typeof (error as NodeJS.ErrnoException).errno === "number";

const bytesOf = async ({ path, state }: Target): Promise<Buffer | undefined> =>
  state === undefined ? undefined : readFile(path);

async function put(
  { part }: Lock,
  target: Target,
  old: Buffer | undefined,
  content: string | Uint8Array,
): Promise<void> {
  try {
    // not made anew: without it the lock is lost
    const handle = await open(part, "r+");
    try {
      await handle.writeFile(content);
    } finally {
      await handle.close();
    }
    await settled(part, target);
    if (old === undefined) return await placedNew(part, target.path, target.asked);
    if (!old.equals(await readFile(target.path))) throw changedMeanwhile(target.asked);
    await rename(part, target.path);
  } catch (error) {
    const { code, path } = error as NodeJS.ErrnoException;
    throw code === "ENOENT" && path === part ? lockLost(target.asked) : error;
  }
}

const lockLost = (asked: string): RillbookError =>
  new RillbookError(
    "job-locked",
    `${asked} was left as it is: this run stood still so long that another took its place. Try again.`,
  );

const changedMeanwhile = (asked: string): RillbookError =>
  new RillbookError(
    "job-changed",
    `${asked} was changed by another program while this run worked, and is left as that program wrote it. Look at it and try again.`,
  );
