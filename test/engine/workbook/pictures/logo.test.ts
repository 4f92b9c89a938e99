import { join } from "node:path";
import { strFromU8, strToU8, unzipSync, zipSync } from "fflate";
import { beforeAll, expect, test } from "vitest";
import { carryPictures } from "../../../../engine/workbook/pictures/carry.js";
import { withLogo } from "../../../../engine/workbook/pictures/logo.js";
import { logoName, type Picture } from "../../../../engine/workbook/pictures/picture.js";
import { withPictures } from "../../../../engine/workbook/pictures/place.js";
import { readPictures } from "../../../../engine/workbook/pictures/read.js";
import { pictureFile } from "../../../../engine/workbook/pictures/size.js";
import { type Slot, slotsOf } from "../../../../engine/workbook/pictures/slots.js";
import { bidOf, type DemoBid, demoFolder } from "../../../support/demo.js";
import { gif, jpeg, png } from "../../../support/pictures.js";

let bid: DemoBid;
let slots: readonly Slot[];
const picture = png(30);
const logo = pictureFile(picture);

beforeAll(async () => {
  bid = await bidOf(join(demoFolder, "garden-corner.json"));
  slots = slotsOf(bid.model);
}, 180_000);

/** A frame of 6 lines of 10 samples behind an empty application segment. */
const framed = new Uint8Array([
  ...[0xff, 0xd8, 0xff, 0xe0, 0, 2, 0xff, 0xc4, 0, 2],
  ...[0xff, 0xc2, 0, 11, 8, 0, 6, 0, 10, 1, 1, 0x11, 0, 0xff, 0xd9],
]);

test.each([
  ["a PNG", picture, { kind: "png", width: 30, height: 30 }],
  ["a JPEG", framed, { kind: "jpeg", width: 10, height: 6 }],
] as const)("%s tells its size", (_, bytes, told) => {
  expect(pictureFile(bytes)).toEqual({ ...told, bytes });
});

test.each([
  ["a GIF", gif],
  ["a JPEG without a frame", jpeg],
  ["a PNG that ends in its head", picture.slice(0, 20)],
  ["a text", strToU8("%PDF-1.7 and what follows")],
  ["nothing", new Uint8Array()],
])("%s is no logo", (_, bytes) => {
  expect(pictureFile(bytes)).toBeUndefined();
});

const logosIn = (bytes: Uint8Array) =>
  readPictures(bytes).pictures.filter(({ name }) => name === logoName);

test("it stands on the pages for people outside that take paper, within the place kept for it", () => {
  const found = logosIn(withLogo(bid.bytes, bid.model, logo));
  const sheets = found.map(({ sheet }) => sheet);
  expect(new Set(sheets)).toEqual(new Set(["Proposal", "Orders", "Hand-over"]));
  const orders = sheets.filter((sheet) => sheet === "Orders").length;
  const used = bid.values[bid.model.byId.get("orders_made")?.index as number];
  expect(orders).toBe(used);
  for (const { sheet, place, bytes } of found) {
    expect(bytes).toEqual(picture);
    if (place.by !== "cell") throw new Error(`It hangs by ${place.by}.`);
    const { row, column, columnOffset } = place.from;
    const slot = slots.find((one) => one.sheet === sheet && one.from.row - 1 === row);
    expect(slot?.look).toBe("logo");
    expect(column).toBeGreaterThanOrEqual((slot?.from.column as number) - 1);
    expect(column).toBeLessThan(slot?.to.column as number);
    // an offset past its cell would be cut off
    expect(columnOffset).toBeLessThan(60 * 12700);
    expect(place.size.width).toBe(place.size.height);
    expect(place.size.height / 12700).toBeGreaterThan(30);
    expect(place.size.height / 12700).toBeLessThan(50);
  }
});

test("the same logo gives the same bytes, and none changes nothing", () => {
  const [once, again] = [1, 2].map(() => withLogo(bid.bytes, bid.model, logo));
  expect(Buffer.from(once as Uint8Array).equals(again as Uint8Array)).toBe(true);
  expect(withLogo(bid.bytes, bid.model, undefined)).toBe(bid.bytes);
});

function placeOfProposal(): Slot {
  const found = slots.find(({ sheet, look }) => sheet === "Proposal" && look === "logo");
  if (found === undefined) throw new Error("The proposal keeps no place for a logo.");
  return found;
}

function ownPicture(name: string): Picture {
  const { row, column } = placeOfProposal().from;
  return {
    ...{ sheet: "Proposal", kind: "png", bytes: png(9), name, description: "" },
    place: {
      by: "cell",
      from: { column: column - 1, columnOffset: 0, row: row - 1, rowOffset: 0 },
      size: { width: 500_000, height: 500_000 },
    },
    ...{ turned: 0, mirrored: { across: false, down: false }, cut: { l: 0, t: 0, r: 0, b: 0 } },
  };
}

test("a picture that a person put into its place stays theirs", () => {
  const found = readPictures(
    withLogo(withPictures(bid.bytes, [ownPicture("Ours")]), bid.model, logo),
  ).pictures.filter(({ sheet }) => sheet === "Proposal");
  expect(found.map(({ name }) => name)).toEqual(["Ours"]);
});

test("a logo comes along once: as it stands, or anew from the book", () => {
  const old = withPictures(withLogo(bid.bytes, bid.model, pictureFile(png(12))), [
    { ...ownPicture("Photo"), sheet: "Walk" },
  ]);
  expect(logosIn(carryPictures(old, bid.bytes).bytes)).toHaveLength(logosIn(old).length);
  const anew = withLogo(carryPictures(old, bid.bytes, "book").bytes, bid.model, logo);
  expect(logosIn(anew).map(({ bytes }) => bytes)).toEqual(logosIn(old).map(() => picture));
  const { bytes: none } = carryPictures(old, bid.bytes, "book");
  expect(readPictures(none).pictures.map(({ name }) => name)).toEqual(["Photo"]);
});

test("a page without its rows in sight gets none", () => {
  const parts = unzipSync(bid.bytes);
  const { row } = placeOfProposal().from;
  const names = strFromU8(parts["xl/workbook.xml"] as Uint8Array).matchAll(
    /<sheet [^>]*?name="([^"]*)"/g,
  );
  const at = [...names].findIndex(([, name]) => name === "Proposal") + 1;
  const path = `xl/worksheets/sheet${at}.xml`;
  const xml = strFromU8(parts[path] as Uint8Array);
  parts[path] = strToU8(xml.replace(`<row r="${row}"`, `<row r="${row}" hidden="1"`));
  const found = logosIn(withLogo(zipSync(parts, { level: 1 }), bid.model, logo));
  expect(found.map(({ sheet }) => sheet)).not.toContain("Proposal");
});
