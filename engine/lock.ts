import { constants } from "node:fs";
import { access, realpath } from "node:fs/promises";
import { dirname, join, resolve } from "node:path";
import { lock } from "proper-lockfile";
import { RillbookError } from "./errors.js";

/** A lock whose holder was killed is free for others after this time. */
const staleAfterMs = 10_000;
/** Longer than that, so that a killed holder stops nobody. */
const patience = { retries: 100, minTimeout: 20, maxTimeout: 250, factor: 1.3 };

/**
 * Does some work while no other process does any under the same path, which need not exist
 * yet. `mustHold` is to be called right before writing: it throws if the lock was lost.
 * Throws RillbookError where the lock cannot be had in about 20 seconds.
 */
export async function withLock<T>(
  path: string,
  work: (mustHold: () => void) => Promise<T>,
): Promise<T> {
  const target = await realTarget(path);
  // asked first, since the lock would be tried for again and again
  await access(dirname(target), constants.W_OK).catch((error: NodeJS.ErrnoException) => {
    throw unlockable(path, error);
  });
  let lost: Error | undefined;
  const release = await lock(target, {
    realpath: false,
    stale: staleAfterMs,
    retries: patience,
    onCompromised: (error) => {
      lost = error;
    },
  }).catch((error: NodeJS.ErrnoException) => {
    throw unlockable(path, error);
  });
  try {
    return await work(() => {
      if (lost !== undefined) throw lostLock(path);
    });
  } finally {
    if (lost === undefined) await release();
  }
}

/** One path for one file, also where folders are linked. */
async function realTarget(path: string): Promise<string> {
  const target = resolve(path);
  const name = target.slice(dirname(target).length).replace(/^[\\/]/, "");
  return realpath(target).catch(async () =>
    join(await realpath(dirname(target)).catch(() => dirname(target)), name),
  );
}

function unlockable(path: string, error: NodeJS.ErrnoException): RillbookError {
  if (error.code === "ELOCKED") {
    return new RillbookError(
      "job-locked",
      `${path} is being changed by another run of this program (${path}.lock stands beside it). Wait until it is done and try again.`,
    );
  }
  const reason =
    error.code === "ENOENT" ? "the folder does not exist" : (error.code ?? error.message);
  return new RillbookError(
    "output-not-writable",
    `${path} cannot be written (${reason}). Check the folder and its permissions.`,
  );
}

function lostLock(path: string): RillbookError {
  return new RillbookError(
    "job-locked",
    `${path} was left as it is: this run stood still so long that another may have taken its place. Try again.`,
  );
}
