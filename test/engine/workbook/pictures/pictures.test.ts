import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { strFromU8, unzipSync } from "fflate";
import { describe, expect, test } from "vitest";
import {
  carryPictures,
  withPicturesFrom,
  withPicturesOver,
} from "../../../../engine/workbook/pictures/carry.js";
import { kindOf } from "../../../../engine/workbook/pictures/picture.js";
import { pictureLimits, readPictures } from "../../../../engine/workbook/pictures/read.js";
import { readWorkbook } from "../../../../engine/workbook/read/read.js";
import { fenceWorkbook } from "../../../support/fence-bid.js";
import { pageWorkbook } from "../../../support/fence-page.js";
import { drawnOn, gif, jpeg, oneCell, pic, png, twoCells } from "../../../support/pictures.js";

const fresh = await fenceWorkbook();
const photo = png(8);
const sketch = png(5, [200, 30, 30]);
const withPhoto = (anchor: string, file: Uint8Array = photo) =>
  drawnOn(fresh, "Site", [anchor], { a: { file } });

test.each([
  ["png", photo],
  ["jpeg", jpeg],
  ["gif", gif],
] as const)("a %s is told by its first bytes and carried as it is", (kind, file) => {
  expect(kindOf(file)).toBe(kind);
  const { bytes, left } = carryPictures(withPhoto(twoCells(10, 4, pic("a")), file), fresh);
  expect(left).toEqual([]);
  const [picture, ...more] = readPictures(bytes).pictures;
  expect(more).toEqual([]);
  expect(picture?.kind).toBe(kind);
  expect(picture?.bytes).toEqual(file);
});

test("place, size, turn, cut, name and description are carried", () => {
  const cut = '<a:srcRect l="1000" b="25000"/>';
  const xfrm = '<a:xfrm flipH="1"><a:off x="0" y="0"/><a:ext cx="1800000" cy="900000"/></a:xfrm>';
  const { bytes } = carryPictures(withPhoto(twoCells(10, 4, pic("a", { xfrm, cut }))), fresh);
  expect(readPictures(bytes).pictures).toEqual([
    {
      sheet: "Site",
      kind: "png",
      bytes: photo,
      name: "Photo & sketch",
      description: "The back <wall>",
      place: {
        by: "cell",
        from: { column: 10, columnOffset: 1000, row: 4, rowOffset: 2000 },
        size: { width: 1_800_000, height: 900_000 },
      },
      turned: 0,
      mirrored: { across: true, down: false },
      cut: { l: 1000, t: 0, r: 0, b: 25000 },
    },
  ]);
});

test("a turned picture, and one whose size nothing tells, hang by both corners", () => {
  const turned =
    '<a:xfrm rot="5400000"><a:off x="0" y="0"/><a:ext cx="1800000" cy="900000"/></a:xfrm>';
  const untold = '<a:xfrm><a:off x="0" y="0"/><a:ext cx="0" cy="0"/></a:xfrm>';
  for (const xfrm of [turned, untold]) {
    const { bytes } = carryPictures(withPhoto(twoCells(10, 4, pic("a", { xfrm }))), fresh);
    const [picture] = readPictures(bytes).pictures;
    expect(picture?.place).toMatchObject({ by: "cells", to: { column: 13, row: 7 } });
    expect(picture?.turned).toBe(xfrm === turned ? 5_400_000 : 0);
  }
});

test("one that lies on the page, not in a cell, stays there", () => {
  const anchor = `<xdr:absoluteAnchor><xdr:pos x="7" y="9"/><xdr:ext cx="11" cy="13"/>${pic("a")}<xdr:clientData/></xdr:absoluteAnchor>`;
  const { bytes } = carryPictures(withPhoto(anchor), fresh);
  expect(readPictures(bytes).pictures[0]?.place).toEqual({
    by: "page",
    x: 7,
    y: 9,
    size: { width: 11, height: 13 },
  });
});

test("pictures of several sheets come along, one that stands twice is kept once, and all else stays as it was written", () => {
  const two = drawnOn(
    withPhoto(twoCells(10, 4, pic("a"))),
    "Runs",
    [oneCell(12, 2, pic("a")), oneCell(12, 20, pic("b"))],
    { a: { file: photo }, b: { file: sketch } },
  );
  const { bytes } = carryPictures(two, fresh);
  expect(readPictures(bytes).pictures.map((one) => [one.sheet, one.bytes])).toEqual([
    ["Site", photo],
    ["Runs", photo],
    ["Runs", sketch],
  ]);
  const [parts, before] = [unzipSync(bytes), unzipSync(fresh)];
  expect(Object.keys(parts).filter((name) => name.startsWith("xl/media/"))).toHaveLength(2);
  const cells = (one: Uint8Array) =>
    readWorkbook(one).sheets.map(({ name, cells: inside }) => [name, inside]);
  expect(cells(bytes)).toEqual(cells(fresh));
  for (const [name, part] of Object.entries(before)) {
    if (/Content_Types|\.rels$/.test(name)) continue;
    const now = strFromU8(parts[name] as Uint8Array).replace(/<drawing [^>]*>/, "");
    expect(now, name).toBe(strFromU8(part).replace(/<drawing [^>]*>/, ""));
  }
});

test("the same pictures give the same bytes, also when they are carried again", () => {
  const from = withPhoto(twoCells(10, 4, pic("a")));
  const once = carryPictures(from, fresh).bytes;
  expect(carryPictures(from, fresh).bytes).toEqual(once);
  expect(carryPictures(once, fresh).bytes).toEqual(once);
});

test("a workbook without pictures changes nothing", () => {
  expect(carryPictures(fresh, fresh)).toEqual({ bytes: fresh, left: [] });
});

const box = "<xdr:sp><xdr:txBody><a:p><a:r><a:t>here</a:t></a:r></a:p></xdr:txBody></xdr:sp>";
const linked = pic("a").replace("r:embed", "r:link");

describe("what cannot be carried is told", () => {
  test.each([
    [
      "another kind of picture",
      withPhoto(twoCells(9, 4, pic("a")), new Uint8Array([66, 77, 1])),
      "Site: a picture that is neither PNG, JPEG nor GIF",
    ],
    [
      "a linked one",
      withPhoto(twoCells(9, 4, linked)),
      "Site: a picture whose file lies outside the workbook",
    ],
    [
      "one outside",
      drawnOn(fresh, "Site", [twoCells(9, 4, pic("a"))], { a: { outside: "file:///etc/hosts" } }),
      "Site: a picture whose file lies outside the workbook",
    ],
    ["a text box", withPhoto(twoCells(9, 4, box)), "Site: a text box or shape"],
    [
      "a group",
      withPhoto(twoCells(9, 4, `<xdr:grpSp>${pic("a")}</xdr:grpSp>`)),
      "Site: a group of shapes",
    ],
    [
      "no place",
      withPhoto(`<xdr:twoCellAnchor>${pic("a")}<xdr:clientData/></xdr:twoCellAnchor>`),
      "Site: a picture without a place",
    ],
  ])("%s", (_, from, told) => {
    expect(carryPictures(from, fresh).left).toEqual([told]);
  });

  test("too many, too large, too much", () => {
    const many = Array.from({ length: 4 }, (_, i) => oneCell(10, i, pic("a")));
    const from = drawnOn(fresh, "Site", [...many, oneCell(11, 0, pic("b"))], {
      a: { file: photo },
      b: { file: sketch },
    });
    const left = (limits: Partial<typeof pictureLimits>) =>
      readPictures(from, { ...pictureLimits, ...limits }).left;
    expect(left({ count: 3 })).toEqual(Array(2).fill("Site: a picture past the first 3"));
    expect(left({ each: photo.length - 1 })).toHaveLength(sketch.length >= photo.length ? 5 : 4);
    expect(left({ all: photo.length + sketch.length - 1 })).toEqual([
      expect.stringContaining("in all"),
    ]);
    expect(left({ all: photo.length + sketch.length })).toEqual([]);
  });

  test("a sheet that the bid does not have", async () => {
    const from = drawnOn(await pageWorkbook(), "Letter", [oneCell(20, 4, pic("a"))], {
      a: { file: photo },
    });
    expect(carryPictures(from, fresh).left).toEqual(["Letter: a picture on a sheet of its own"]);
  });
});

test("a bid written over one with a text box is refused, and told why", async () => {
  const folder = await mkdtemp(join(tmpdir(), "rillbook-pictures-"));
  try {
    const path = join(folder, "bid.xlsx");
    expect(await withPicturesOver(path, fresh)).toBe(fresh);
    await writeFile(path, withPhoto(twoCells(9, 4, box)));
    await expect(withPicturesOver(path, fresh)).rejects.toMatchObject({
      code: "drawings-lost",
      message: expect.stringContaining("Site: a text box or shape"),
    });
    await writeFile(path, withPhoto(twoCells(10, 4, pic("a"))));
    expect(readPictures(await withPicturesOver(path, fresh)).pictures).toHaveLength(1);
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
});

test("a bid of one workbook written over another keeps the pictures of both, or is refused", async () => {
  const folder = await mkdtemp(join(tmpdir(), "rillbook-pictures-"));
  try {
    const [yard, target] = [join(folder, "yard.xlsx"), join(folder, "bid.xlsx")];
    await writeFile(yard, fresh);
    const pictured = withPhoto(oneCell(20, 4, pic("a")));
    await writeFile(target, pictured);
    await expect(withPicturesFrom(yard, target, fresh)).rejects.toMatchObject({
      code: "drawings-lost",
      message: expect.stringMatching(
        /bid\.xlsx holds .*Site: a picture that is not in .*yard\.xlsx/,
      ),
    });
    await writeFile(yard, pictured);
    const bytes = await withPicturesFrom(yard, target, fresh);
    expect(readPictures(bytes).pictures).toHaveLength(1);
    await writeFile(target, bytes);
    expect(readPictures(await withPicturesFrom(yard, target, fresh)).pictures).toHaveLength(1);
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
});
