import { readFile, stat } from "node:fs/promises";
import type { WorkbookContent } from "./content.js";
import { defaultLimits } from "./limits.js";
import { type ReadOptions, readWorkbook } from "./read.js";
import { type RefusalCode, WorkbookRefused } from "./refused.js";

/**
 * Reads a workbook from disk. The size is looked at first, so that a huge file is never loaded.
 * Throws WorkbookRefused as readWorkbook does, with the path before the sentence, and for a file that is missing,
 * not a regular file, or not readable.
 */
export async function readWorkbookFile(
  path: string,
  options: ReadOptions = {},
): Promise<WorkbookContent> {
  const info = await stat(path).catch((error) => {
    throw unreadable(path, error);
  });
  if (!info.isFile()) {
    throw refusedAt(
      path,
      "workbook-file",
      "This is not a file. Give the path of an .xlsx workbook.",
    );
  }
  const most = options.limits?.fileBytes ?? defaultLimits.fileBytes;
  if (info.size > most) {
    throw refusedAt(
      path,
      "workbook-size",
      `The file has ${info.size} bytes; at most ${most} are read. Take large photos out of the workbook and save again.`,
    );
  }
  const bytes = await readFile(path).catch((error) => {
    throw unreadable(path, error);
  });
  try {
    return readWorkbook(bytes, options);
  } catch (error) {
    if (error instanceof WorkbookRefused) {
      throw refusedAt(path, error.code as RefusalCode, error.message);
    }
    throw error;
  }
}

function unreadable(path: string, error: NodeJS.ErrnoException): WorkbookRefused {
  const sentence =
    error.code === "ENOENT" || error.code === "ENOTDIR"
      ? "There is no such file. Check the path."
      : `The file cannot be read (${error.code ?? error.message}). Check its permissions, and that no other program holds it.`;
  return refusedAt(path, "workbook-file", sentence);
}

function refusedAt(path: string, code: RefusalCode, sentence: string): WorkbookRefused {
  return new WorkbookRefused(code, `${path}: ${sentence}`);
}
