import type { Stats } from "node:fs";
import { readFile, stat } from "node:fs/promises";
import { RillbookError } from "./errors.js";

/** No job record or office book comes near this; a larger one would only fill the memory. */
const mostBytes = 256e6;

/** Reads a text file; throws RillbookError where it is missing, no regular file, or cannot be read. */
export async function readText(path: string, what: string): Promise<string> {
  const bytes = await readBytes(path, what);
  // some editors put a byte order mark first, which no text begins with
  return bytes.toString("utf8").replace(/^\uFEFF/, "");
}

/** The same for the bytes of a file. A pipe or a device is never opened: it might give nothing for ever. */
export async function readBytes(path: string, what: string): Promise<Buffer> {
  try {
    const state = await stat(path);
    mustBeRegular(state, `The ${what} ${path}`);
    if (state.size <= mostBytes) return await readFile(path);
    throw new RillbookError(
      "file-too-large",
      `The ${what} ${path} has ${state.size} bytes; at most ${mostBytes} are read. Name another file.`,
    );
  } catch (error) {
    if (error instanceof RillbookError) throw error;
    const reason = (error as NodeJS.ErrnoException).code ?? String(error);
    throw new RillbookError(
      "file-unreadable",
      reason === "ENOENT"
        ? `The ${what} ${path} does not exist. Check the name.`
        : `The ${what} ${path} cannot be read (${reason}).`,
    );
  }
}

/** Throws RillbookError for a folder, a pipe, a socket or a device. */
export function mustBeRegular(state: Stats, subject: string): void {
  if (state.isFile()) return;
  throw new RillbookError(
    "file-unreadable",
    `${subject} is ${kindOf(state)}, not a file. Name a file.`,
  );
}

function kindOf(state: Stats): string {
  if (state.isDirectory()) return "a folder";
  return state.isFIFO() ? "a pipe" : state.isSocket() ? "a socket" : "a device";
}
