import { readFile } from "node:fs/promises";
import { RillbookError } from "./errors.js";

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
