import { readSync } from "node:fs";
import { type FileHandle, open, stat } from "node:fs/promises";
import { RillbookError } from "../errors.js";
import { mustBeRegular } from "../files.js";
import { unwritable } from "../output/system-error.js";
import type { Line, RunLine } from "./lines.js";

/** A line with its place in the file, in bytes. */
export interface PlacedLine {
  readonly line: Line;
  readonly from: number;
  readonly length: number;
}

/** A result file that is being written: lines are only ever added at its end. */
export class ResultFile {
  private constructor(
    readonly path: string,
    readonly handle: FileHandle,
  ) {}

  /** Begins a file, in place of one that came to its end. */
  static async begin(path: string, run: RunLine): Promise<ResultFile> {
    const file = new ResultFile(path, await opened(path, "w"));
    await file.add([run]);
    return file;
  }

  /** Goes on with a file from byte `at`: what stands behind (a torn line, the end line) is cut off. */
  static async goOn(path: string, at: number): Promise<ResultFile> {
    const handle = await opened(path, "r+");
    await handle.truncate(at);
    await handle.close();
    return new ResultFile(path, await opened(path, "a"));
  }

  async add(lines: readonly Line[]): Promise<void> {
    if (lines.length === 0) return;
    const text = lines.map((line) => `${JSON.stringify(line)}\n`).join("");
    await this.handle.appendFile(text).catch((error) => {
      throw unwritable(this.path, error);
    });
  }

  async close(): Promise<void> {
    await this.handle.sync();
    await this.handle.close();
  }
}

async function opened(path: string, flags: string): Promise<FileHandle> {
  try {
    if (flags === "r") mustBeRegular(await stat(path), `The result file ${path}`);
    return await open(path, flags);
  } catch (error) {
    if (error instanceof RillbookError) throw error;
    if (flags !== "r") throw unwritable(path, error);
    throw new RillbookError(
      "file-unreadable",
      `The result file ${path} cannot be read (${(error as NodeJS.ErrnoException).code}). Check the name and its permissions.`,
    );
  }
}

/**
 * The lines of a result file, one after another. A torn last line, as a killed run leaves it,
 * is passed over. Throws RillbookError for a file that is missing or not a result file.
 */
export async function* readLines(path: string): AsyncGenerator<PlacedLine> {
  const handle = await opened(path, "r");
  try {
    let from = 0;
    let number = 0;
    let rest = Buffer.alloc(0);
    for await (const chunk of handle.createReadStream({ autoClose: false })) {
      const bytes = Buffer.concat([rest, chunk as Buffer]);
      let start = 0;
      for (let end = bytes.indexOf(10); end >= 0; end = bytes.indexOf(10, start)) {
        const text = bytes.toString("utf8", start, end);
        number += 1;
        yield { line: parsed(text, path, number), from, length: end - start };
        from += end - start + 1;
        start = end + 1;
      }
      rest = bytes.subarray(start);
    }
  } finally {
    await handle.close();
  }
}

const kinds = new Set(["run", "job", "error", "skipped", "end"]);

function parsed(text: string, path: string, number: number): Line {
  try {
    const line = JSON.parse(text) as Line;
    if (kinds.has(line.line) && (line.line === "run") === (number === 1)) return line;
  } catch {
    // told below, with the place
  }
  throw new RillbookError(
    "result-file",
    `${path}, line ${number}, is not a line of a rerun. Name the file that rerun wrote (.jsonl), or start again without --resume.`,
  );
}

/** One line again, by its place: at once, since a summary asks for thousands of them and has nothing else to do. */
export function lineAt(
  { fd }: FileHandle,
  { from, length }: Pick<PlacedLine, "from" | "length">,
): Line {
  const bytes = Buffer.alloc(length);
  readSync(fd, bytes, 0, length, from);
  return JSON.parse(bytes.toString("utf8")) as Line;
}

/** Does the file exist and does it not end with an end line? */
export async function isUnfinished(path: string): Promise<boolean> {
  const state = await stat(path).catch(() => undefined);
  if (state === undefined) return false;
  const handle = await opened(path, "r");
  try {
    const length = Math.min(state.size, 400);
    const tail = Buffer.alloc(length);
    await handle.read(tail, 0, length, state.size - length);
    return !/\{"line":"end"[^\n]*\}\n$/.test(tail.toString("utf8"));
  } finally {
    await handle.close();
  }
}
