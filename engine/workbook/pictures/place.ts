import { createHash } from "node:crypto";
import { Archive } from "../write/archive.js";
import { escaped } from "../write/package.js";
import { addRelation, drawingOf, edit, sheetPart } from "../write/parts.js";
import { relations } from "../write/xml/links.js";
import { type Corner, type Picture, type PictureKind, type Place, sides } from "./picture.js";

/** Puts pictures on the sheets of a written workbook. The same arguments give the same bytes. */
export function withPictures(workbook: Uint8Array, pictures: readonly Picture[]): Uint8Array {
  if (pictures.length === 0) return workbook;
  const parts = new Archive(workbook);
  for (const kind of new Set(pictures.map((one) => one.kind))) addKind(parts, kind);
  const links = new Map<string, string>();
  pictures.forEach((picture, i) => {
    const media = mediaPart(parts, picture);
    const drawing = drawingOf(parts, sheetPart(parts, picture.sheet), `pictures_${i + 1}`);
    const known = links.get(`${drawing} ${media}`);
    const link =
      known ?? addRelation(parts, `xl/drawings/${drawing}`, "image", `../media/${media}`);
    links.set(`${drawing} ${media}`, link);
    edit(parts, `xl/drawings/${drawing}`, "</xdr:wsDr>", anchored(picture, i + 1, link));
  });
  return parts.packed();
}

/** Named by what it holds, so that a picture that stands twice is kept once. */
function mediaPart(parts: Archive, { bytes, kind }: Picture): string {
  const name = `picture_${createHash("sha256").update(bytes).digest("hex").slice(0, 16)}.${kind}`;
  parts.put(`xl/media/${name}`, bytes);
  return name;
}

function addKind(parts: Archive, kind: PictureKind): void {
  const types = parts.text("[Content_Types].xml");
  if (types.includes(`Extension="${kind}"`)) return;
  const said = `<Default Extension="${kind}" ContentType="image/${kind}"/>`;
  parts.put(
    "[Content_Types].xml",
    types.replace(/<Types [^>]*>/, (open) => open + said),
  );
}

/** The sheet's protection leaves it free: whoever put it there may move it. */
const free = '<xdr:clientData fLocksWithSheet="0"/>';

function anchored(picture: Picture, number: number, link: string): string {
  const { place } = picture;
  const inner = `${pictureXml(picture, number, link)}${free}`;
  if (place.by === "cells") {
    const corners = cornerXml("from", place.from) + cornerXml("to", place.to);
    const moves = /^(twoCell|oneCell|absolute)$/.test(place.moves) ? place.moves : "twoCell";
    return `<xdr:twoCellAnchor editAs="${moves}">${corners}${inner}</xdr:twoCellAnchor>`;
  }
  const size = `<xdr:ext cx="${place.size.width}" cy="${place.size.height}"/>`;
  return place.by === "cell"
    ? `<xdr:oneCellAnchor>${cornerXml("from", place.from)}${size}${inner}</xdr:oneCellAnchor>`
    : `<xdr:absoluteAnchor><xdr:pos x="${place.x}" y="${place.y}"/>${size}${inner}</xdr:absoluteAnchor>`;
}

const cornerXml = (end: string, { column, columnOffset, row, rowOffset }: Corner): string =>
  `<xdr:${end}><xdr:col>${column}</xdr:col><xdr:colOff>${columnOffset}</xdr:colOff>` +
  `<xdr:row>${row}</xdr:row><xdr:rowOff>${rowOffset}</xdr:rowOff></xdr:${end}>`;

function pictureXml({ name, description, cut, ...look }: Picture, number: number, link: string) {
  const named = `id="${number + 2000}" name="${escaped(name || `Picture ${number}`)}"`;
  const told = description === "" ? "" : ` descr="${escaped(description)}"`;
  const cuts = sides.filter((side) => cut[side] !== 0).map((side) => ` ${side}="${cut[side]}"`);
  const source = cuts.length === 0 ? "" : `<a:srcRect${cuts.join("")}/>`;
  return (
    `<xdr:pic><xdr:nvPicPr><xdr:cNvPr ${named}${told}/><xdr:cNvPicPr><a:picLocks noChangeAspect="1"/></xdr:cNvPicPr></xdr:nvPicPr>` +
    `<xdr:blipFill><a:blip xmlns:r="${relations}" r:embed="${link}"/>${source}<a:stretch><a:fillRect/></a:stretch></xdr:blipFill>` +
    `<xdr:spPr>${frameXml(look)}<a:prstGeom prst="rect"><a:avLst/></a:prstGeom></xdr:spPr></xdr:pic>`
  );
}

function frameXml({ place, turned, mirrored }: Pick<Picture, "place" | "turned" | "mirrored">) {
  const { width, height } = sizeIn(place);
  const turn = turned === 0 ? "" : ` rot="${turned}"`;
  const flips = `${mirrored.across ? ' flipH="1"' : ""}${mirrored.down ? ' flipV="1"' : ""}`;
  return `<a:xfrm${turn}${flips}><a:off x="0" y="0"/><a:ext cx="${width}" cy="${height}"/></a:xfrm>`;
}

/** What hangs by two corners has its size from them. */
const sizeIn = (place: Place) => (place.by === "cells" ? { width: 0, height: 0 } : place.size);
