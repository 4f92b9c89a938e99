import { readSync, writeSync } from "node:fs";
import promises, { type FileHandle } from "node:fs/promises";
import { syncBuiltinESMExports } from "node:module";

// For programs that tests start: what a run does with files is held at a named point, where it stands still with all
// that it has in hand until the test says go or kills it. So a test stops each step exactly, by no clock and no luck.

/** Where a run can be held, in the order in which a change of a file comes by; `written` is written without a lock. */
export const points = [
  "before the lock",
  "with the lock",
  "with an empty part",
  "with half a part",
  "before the part takes the place",
  "after the part took the place",
] as const;
export type Point = (typeof points)[number];

/** The line by which a program tells that it stands still. */
export const stands = "stands still";

const isPart = (path: unknown): boolean => String(path).endsWith(".part");

/** Has this process stand still where it comes by a point for the `time`th time. */
export function standStillAt(point: Point, time: number): void {
  let passed = 0;
  const at = (here: Point): void => {
    if (here !== point) return;
    passed += 1;
    if (passed !== time) return;
    writeSync(1, `${stands}\n`);
    // nothing else of the process goes on meanwhile, no timer either
    readSync(0, new Uint8Array(1));
  };
  const real = { ...promises };

  promises.rename = async (from, to) => {
    const takesLock = String(to).endsWith(".lock");
    at(takesLock ? "before the lock" : "before the part takes the place");
    await real.rename(from, to);
    at(takesLock ? "with the lock" : "after the part took the place");
  };

  /** The same write in two halves. */
  const inHalves = async (content: unknown, write: (half: Uint8Array) => Promise<void>) => {
    const bytes = Buffer.from(content as string);
    const middle = Math.floor(bytes.length / 2);
    at("with an empty part");
    await write(bytes.subarray(0, middle));
    at("with half a part");
    await write(bytes.subarray(middle));
  };

  promises.open = async (...args) => {
    const handle = await real.open(...args);
    if (!isPart(args[0])) return handle;
    const write = handle.writeFile.bind(handle);
    // a handle writes on where it stands
    handle.writeFile = ((content: unknown) => inHalves(content, write)) as FileHandle["writeFile"];
    return handle;
  };

  promises.writeFile = async (path, content, options) => {
    // the part that a lock is made with is empty
    if (!isPart(path) || content === "") return real.writeFile(path, content, options);
    await real.writeFile(path, "", options);
    await inHalves(content, (half) => real.appendFile(path as string, half));
  };

  syncBuiltinESMExports();
}
