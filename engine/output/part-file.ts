import { createHash, randomUUID } from "node:crypto";
import { type FileHandle, open, readdir, rm, stat } from "node:fs/promises";
import { hostname } from "node:os";
import { dirname, join } from "node:path";
import type { Target } from "./target.js";

/** Parts of another machine, whose processes nobody here can ask for, are left alone this long. */
const strangerRestsMs = 24 * 60 * 60 * 1000;
const partName = /^\.rillbook-([0-9a-f]{8})-(\d+)-[0-9a-f-]{36}\.part$/;
const thisHost = createHash("sha256").update(hostname()).digest("hex").slice(0, 8);

/** `.rillbook-MACHINE-PROCESS-RANDOM.part`: whose it is can be told when it is found. */
export const newPartName = (): string =>
  `.rillbook-${thisHost}-${process.pid}-${randomUUID()}.part`;

/** Whether the process that made a part still runs; undefined where that cannot be told. */
export function ownerLives(name: string): boolean | undefined {
  const [, host, pid] = partName.exec(name) ?? [];
  if (host !== thisHost) return undefined;
  try {
    process.kill(Number(pid), 0);
    return true;
  } catch (error) {
    return (error as NodeJS.ErrnoException).code !== "ESRCH";
  }
}

/** Takes away the parts that killed runs left in a folder. What cannot be taken away stays. */
export async function sweep(folder: string): Promise<void> {
  for (const name of await readdir(folder).catch(() => [])) {
    if (!partName.test(name)) continue;
    const path = join(folder, name);
    const lives = ownerLives(name);
    if (lives === true) continue;
    if (lives === undefined) {
      const age = await stat(path).catch(() => undefined);
      if (age === undefined || Date.now() - age.mtimeMs < strangerRestsMs) continue;
    }
    await rm(path, { recursive: true, force: true }).catch(() => undefined);
  }
}

/** A part beside the target, swept before. The name is of no file yet. */
export async function partBeside({ path }: Target): Promise<string> {
  await sweep(dirname(path));
  return join(dirname(path), newPartName());
}

/**
 * Makes a filled part ready to take the place of the target: with its mode and, where the system
 * lets us, its owner, and flushed to the disk.
 */
export async function settled(part: string, { state }: Target): Promise<void> {
  const handle = await open(part, "r+");
  try {
    if (state !== undefined) {
      await owned(handle, Number(state.uid), Number(state.gid));
      // after the owner, whose change takes rights away
      await handle.chmod(Number(state.mode & 0o7777n));
    }
    await handle.sync();
  } finally {
    await handle.close();
  }
}

/** Only the superuser gives files away: others keep the group at least, so that it can go on writing. */
async function owned(handle: FileHandle, uid: number, gid: number): Promise<void> {
  const now = await handle.stat();
  if (now.uid === uid && now.gid === gid) return;
  try {
    await handle.chown(uid, gid);
  } catch {
    await handle.chown(now.uid, gid).catch(() => undefined);
  }
}
