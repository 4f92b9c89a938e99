import { stat } from "node:fs/promises";
import { dirname, resolve } from "node:path";
import { RillbookError } from "../errors.js";
import { readBytes } from "../files.js";
import type { Value } from "../formula/value.js";
import type { Model } from "../template/model.js";
import type { PictureFile } from "../workbook/pictures/picture.js";
import { pictureFile } from "../workbook/pictures/size.js";

/** The most bytes of a logo: it stands on every page that is handed out, and goes out by mail. */
export const mostLogoBytes = 2e6;

/**
 * The picture file that the office book names as the logo; undefined where it names none.
 * Throws RillbookError for a file that is missing, too large, cannot be read, or is no PNG or JPEG picture.
 *
 * @param values the values of a job, with the rules of its office book
 * @param beside the file beside which it is looked for: the office book, else the job
 */
export async function logoOf(
  { template, byId }: Pick<Model, "template" | "byId">,
  values: readonly Value[],
  beside: string,
): Promise<PictureFile | undefined> {
  const cell = byId.get(template.roles?.logo ?? "");
  const named = cell === undefined ? undefined : values[cell.index];
  return cell === undefined || typeof named !== "string" || named.trim() === ""
    ? undefined
    : logoAt(named, beside, cell.name);
}

/** The same for a name as it stands in the book. */
export async function logoAt(named: string, beside: string, rule: string): Promise<PictureFile> {
  const path = resolve(dirname(beside), named);
  const told = `The logo ${path}, named by ${rule} beside ${beside},`;
  const state = await stat(path).catch(() => undefined);
  if (state === undefined) {
    throw new RillbookError(
      "logo-missing",
      `${told} does not exist. Correct the name, which counts from the folder of that file, or clear it.`,
    );
  }
  if (state.isFile()) mustBeSmall(state.size, told);
  return logoIn(new Uint8Array(await readBytes(path, "logo")), told);
}

/**
 * The bytes of a logo as a picture. Throws RillbookError where they are too many, or no PNG or JPEG picture.
 *
 * @param told how the logo is named in what is said of it
 */
export function logoIn(bytes: Uint8Array, told: string): PictureFile {
  mustBeSmall(bytes.byteLength, told);
  const picture = pictureFile(bytes);
  if (picture !== undefined) return picture;
  throw new RillbookError(
    "logo-kind",
    `${told} is no PNG or JPEG picture. Save it as one of these, or name another file.`,
  );
}

function mustBeSmall(size: number, told: string): void {
  if (size <= mostLogoBytes) return;
  throw new RillbookError(
    "logo-too-large",
    `${told} has ${size} bytes; at most ${mostLogoBytes} are taken. Save it smaller.`,
  );
}
