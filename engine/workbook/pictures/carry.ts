import { readFile } from "node:fs/promises";
import { RillbookError } from "../../errors.js";
import { readWorkbook } from "../read/read.js";
import { type RefusalCode, WorkbookRefused } from "../read/refused.js";
import { logoName, type Picture } from "./picture.js";
import { withPictures } from "./place.js";
import { readPictures } from "./read.js";

/** A workbook with the pictures of another one, and what of that could not be carried, in words. */
export interface Carried {
  readonly bytes: Uint8Array;
  readonly left: readonly string[];
}

/** Whether the logo of the office book comes along as it stands, or is put there anew from the book. */
export type LogoFrom = "workbook" | "book";

/** Puts the pictures of one workbook on the sheets of the same name of a freshly written one. */
export function carryPictures(
  from: Uint8Array,
  into: Uint8Array,
  logo: LogoFrom = "workbook",
): Carried {
  const { pictures: all, left } = readPictures(from);
  const pictures = logo === "book" ? all.filter(isPersons) : all;
  if (pictures.length === 0) return { bytes: into, left };
  const sheets = new Set(
    readWorkbook(into, { sheets: () => false }).sheets.map(({ name }) => name),
  );
  const carried = pictures.filter(({ sheet }) => sheets.has(sheet));
  const homeless = pictures.filter(({ sheet }) => !sheets.has(sheet));
  return {
    bytes: withPictures(into, carried),
    left: [...left, ...homeless.map(({ sheet }) => `${sheet}: a picture on a sheet of its own`)],
  };
}

/** Put there by a person, and not by a bid. */
const isPersons = ({ name }: Picture): boolean => name !== logoName;

/**
 * A bid with the pictures of the workbook that it is going to replace; as it is, where none stands there.
 * Throws RillbookError where something drawn there would be lost.
 */
export async function withPicturesOver(
  path: string,
  bid: Uint8Array,
  logo?: LogoFrom,
): Promise<Uint8Array> {
  const old = await fileAt(path);
  if (old === undefined) return bid;
  const { bytes, left } = underPath(path, () => carryPictures(old, bid, logo));
  if (left.length > 0) throw drawingsLost(path, left);
  return bytes;
}

/**
 * A bid with the pictures of the workbook that was filled in, to be written over another file.
 * Throws RillbookError where something drawn in either would be lost.
 */
export async function withPicturesFrom(
  path: string,
  target: string,
  bid: Uint8Array,
  logo?: LogoFrom,
): Promise<Uint8Array> {
  const bytes = await withPicturesOver(path, bid, logo);
  const replaced = await fileAt(target);
  if (replaced === undefined) return bytes;
  const { pictures, left } = underPath(target, () => readPictures(replaced));
  const kept = readPictures(bytes).pictures;
  const isKept = (one: Picture) =>
    kept.some((other) => other.sheet === one.sheet && sameBytes(other.bytes, one.bytes));
  const lost = pictures.filter((one) => isPersons(one) && !isKept(one));
  const told = [...left, ...lost.map(({ sheet }) => `${sheet}: a picture that is not in ${path}`)];
  if (told.length > 0) throw drawingsLost(target, told);
  return bytes;
}

const sameBytes = (one: Uint8Array, other: Uint8Array) => Buffer.from(one).equals(other);

/** What stands there; nothing, where no file or an empty one does. */
async function fileAt(path: string): Promise<Uint8Array | undefined> {
  const bytes = await readFile(path).catch((error: NodeJS.ErrnoException) => {
    if (error.code === "ENOENT") return undefined;
    throw error;
  });
  return bytes?.length === 0 ? undefined : bytes;
}

function underPath<T>(path: string, read: () => T): T {
  try {
    return read();
  } catch (error) {
    if (!(error instanceof WorkbookRefused)) throw error;
    throw new WorkbookRefused(error.code as RefusalCode, `${path}: ${error.message}`);
  }
}

const mostTold = 5;

function drawingsLost(path: string, left: readonly string[]): RillbookError {
  const more = left.length > mostTold ? `; and ${left.length - mostTold} more` : "";
  return new RillbookError(
    "drawings-lost",
    `${path} holds what no new bid can carry: ${left.slice(0, mostTold).join("; ")}${more}. ` +
      "Put it there as a PNG, JPEG or GIF picture on a sheet of the bid, or take it out; or name another file.",
  );
}
