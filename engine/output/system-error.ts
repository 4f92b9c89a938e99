import type { ErrorName } from "../error-codes.js";
import { RillbookError } from "../errors.js";

/** What the system's reason means for a person, and what to do. */
const reasons: Readonly<Record<string, readonly [code: ErrorName, sentence: string]>> = {
  ENOSPC: ["disk-full", "the disk is full. What was there before is whole. Make room on it"],
  EDQUOT: [
    "disk-full",
    "your share of the disk is full. What was there before is whole. Make room in it",
  ],
  EROFS: ["output-not-writable", "the disk can only be read"],
  EACCES: ["output-not-writable", "you may not write there. Ask for the right to"],
  EPERM: ["output-not-writable", "the system does not allow it. Look at the file's rights"],
  EBUSY: ["output-not-writable", "another program holds the file. Close it there"],
  EFBIG: ["output-not-writable", "the file would be larger than the disk allows"],
};

/** An error of the system while a file is written, as a sentence; ours stay as they are. */
export function unwritable(target: string, error: unknown): RillbookError {
  if (error instanceof RillbookError) return error;
  const reason = (error as NodeJS.ErrnoException).code ?? String(error);
  const [code, sentence] = reasons[reason] ?? [
    "output-not-writable",
    "see what the system says. Close the file if it is open",
  ];
  return new RillbookError(
    code,
    `${target} cannot be written (${reason}): ${sentence}, or write to another file.`,
  );
}
