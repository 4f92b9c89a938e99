import { readFile } from "node:fs/promises";
import type { OpenedJob } from "../audit/index.js";
import { logoOf } from "../book/logo.js";
import { logoName, type PictureFile } from "../workbook/pictures/picture.js";
import { readPictures } from "../workbook/pictures/read.js";
import { pictureFile } from "../workbook/pictures/size.js";

/**
 * The logo of a job: of a record, that which its office book names; of a workbook, that which stands on its pages.
 * Throws RillbookError for a file named that is none.
 */
export async function logoOfJob({
  source,
  model,
  values,
  files,
}: OpenedJob): Promise<PictureFile | undefined> {
  const last = files.at(-1) as string;
  if (source === "record") return logoOf(model, values, last);
  const { pictures } = readPictures(new Uint8Array(await readFile(last)));
  const found = pictures.find(({ name }) => name === logoName);
  return found === undefined ? undefined : pictureFile(found.bytes);
}
