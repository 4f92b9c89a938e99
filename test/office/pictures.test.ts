import { mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { addressOf } from "../../engine/address.js";
import { auditWorkbook } from "../../engine/audit/audit.js";
import { withPicturesOver } from "../../engine/workbook/pictures/carry.js";
import { withLogo } from "../../engine/workbook/pictures/logo.js";
import { logoName, type Picture } from "../../engine/workbook/pictures/picture.js";
import { readPictures } from "../../engine/workbook/pictures/read.js";
import { pictureFile } from "../../engine/workbook/pictures/size.js";
import { slotsOf } from "../../engine/workbook/pictures/slots.js";
import { readWorkbook } from "../../engine/workbook/read/read.js";
import { fenceBook } from "../support/fence.js";
import { offerFence, offerModel, offerWorkbook } from "../support/fence-offer.js";
import { png } from "../support/pictures.js";
import { recalculate, takeSteps } from "./soffice.js";

// Photos and sketches that an office puts beside its figures come along from bid to bid, through the saves of
// spreadsheet programs.

let folder: string;
let bid: Uint8Array;
let saved: string;
let sheet: string;
const [photo, sketch] = [png(24), png(16, [180, 60, 20])];
const side = 3000;

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "rillbook-office-pictures-"));
  bid = await offerWorkbook();
  sheet = offerModel.sheets[0]?.name ?? "";
  const made = join(folder, "made.xlsx");
  await writeFile(made, bid);
  const files = [join(folder, "photo.png"), join(folder, "sketch.png")];
  await writeFile(files[0] as string, photo);
  await writeFile(files[1] as string, sketch);
  saved = join(folder, "saved.xlsx");
  await takeSteps(
    made,
    [
      { kind: "picture", sheet, file: files[0] as string, cell: "P5", size: side },
      { kind: "picture", sheet, file: files[1] as string, cell: "P40", size: side },
    ],
    saved,
  );
}, 200_000);
afterAll(() => rm(folder, { recursive: true, force: true }));

const bytesOf = async (path: string) => new Uint8Array(await readFile(path));
const emu = side * 360;

function areThere(pictures: readonly Picture[]): void {
  expect(pictures.map((one) => [one.sheet, one.kind])).toEqual([
    [sheet, "png"],
    [sheet, "png"],
  ]);
  expect(pictures.map(({ bytes }) => bytes)).toEqual([photo, sketch]);
  for (const { place } of pictures) {
    if (place.by !== "cell") throw new Error(`A picture hangs by ${place.by}.`);
    expect(Math.abs(place.size.width / emu - 1)).toBeLessThan(0.01);
    expect(Math.abs(place.size.height / emu - 1)).toBeLessThan(0.01);
  }
  const corners = pictures.map(({ place }) => place.by === "cell" && place.from);
  expect(corners).toMatchObject([
    { column: 15, row: 4 },
    { column: 15, row: 39 },
  ]);
}

test("a picture put in through LibreOffice is in the next bid over it, and after a further save", async () => {
  const found = readPictures(await bytesOf(saved));
  expect(found.left).toEqual([]);
  areThere(found.pictures);
  const again = join(folder, "again.xlsx");
  await writeFile(again, await withPicturesOver(saved, bid));
  areThere(readPictures(await bytesOf(again)).pictures);
  const [twice = ""] = await recalculate([again], join(folder, "twice"));
  areThere(readPictures(await bytesOf(twice)).pictures);
}, 200_000);

test("an audit tells them as the office's own", async () => {
  const carried = await withPicturesOver(saved, bid);
  for (const bytes of [await bytesOf(saved), carried]) {
    const content = readWorkbook(bytes, { look: true });
    const { findings, clean } = await auditWorkbook(content, [offerFence], { book: fenceBook });
    expect(findings.filter(({ grade }) => grade !== "to know")).toEqual([]);
    expect(clean).toBe(true);
    expect(findings.filter(({ code }) => code === "drawn")).toHaveLength(2);
  }
}, 200_000);

test("a photo put into its place on a page, and the logo, come along, and an audit finds them in their places", async () => {
  const logo = pictureFile(png(20));
  const slot = slotsOf(offerModel).find((one) => one.sheet === "Offer" && one.look === "photo");
  const cell = addressOf(slot?.from.column as number, slot?.from.row as number);
  const made = join(folder, "with-logo.xlsx");
  const written = withLogo(bid, offerModel, logo);
  await writeFile(made, written);
  const edited = join(folder, "with-photo.xlsx");
  const file = join(folder, "photo.png");
  await takeSteps(made, [{ kind: "picture", sheet: "Offer", file, cell, size: side }], edited);
  const logos = readPictures(written).pictures.map((one) => one.sheet);
  const kept = await withPicturesOver(edited, bid);
  const anew = withLogo(await withPicturesOver(edited, bid, "book"), offerModel, logo);
  for (const bytes of [await bytesOf(edited), kept, anew]) {
    const { pictures, left } = readPictures(bytes);
    expect(left).toEqual([]);
    const ofOffice = pictures.filter(({ name }) => name === logoName);
    expect(ofOffice.map((one) => one.sheet).sort()).toEqual([...logos].sort());
    const others = pictures.filter(({ name }) => name !== logoName);
    expect(others.map((one) => [one.sheet, one.bytes])).toEqual([["Offer", photo]]);
    const content = readWorkbook(bytes, { look: true });
    const { findings } = await auditWorkbook(content, [offerFence], { book: fenceBook });
    expect(findings.filter(({ grade }) => grade !== "to know")).toEqual([]);
    const drawn = findings.filter(({ code }) => code === "drawn");
    expect(drawn).toHaveLength(pictures.length);
    expect(drawn.every(({ advice }) => advice.includes("keeps this place"))).toBe(true);
  }
  // over the figures below it, the same picture is told
  const below = join(folder, "below.xlsx");
  const under = addressOf(slot?.from.column as number, slot?.to.row as number);
  await takeSteps(
    made,
    [{ kind: "picture", sheet: "Offer", file, cell: under, size: side }],
    below,
  );
  const content = readWorkbook(await bytesOf(below), { look: true });
  const { findings } = await auditWorkbook(content, [offerFence], { book: fenceBook });
  expect(findings.filter(({ grade }) => grade !== "to know")).toMatchObject([
    { code: "drawn", where: "sheet Offer" },
  ]);
}, 400_000);
