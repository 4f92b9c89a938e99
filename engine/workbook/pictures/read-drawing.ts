import { drawing, relationships } from "../read/namespaces.js";
import type { Package } from "../read/package.js";
import type { Attributes } from "../read/xml.js";
import { type Corner, type Picture, type Place, type Side, sides } from "./picture.js";

/** A picture in a drawing, before its bytes are looked at. */
export interface Placed extends Omit<Picture, "sheet" | "kind" | "bytes" | "place"> {
  /** The id of the relation to its bytes; undefined where they lie outside the workbook. */
  readonly link: string | undefined;
  /** Undefined where no place can be made out. */
  readonly place: Place | undefined;
}

/** What a drawing holds besides charts. */
export interface Drawing {
  readonly pictures: readonly Placed[];
  /** What is no picture, in words. */
  readonly others: readonly string[];
}

const anchorPath = /^wsDr\/(oneCell|twoCell|absolute)Anchor$/;
const picturePath = /^wsDr\/\w+Anchor\/pic\b/;
const cornerPath = /^wsDr\/\w+Anchor\/(from|to)\/(row|col|rowOff|colOff)$/;
const otherPath = /\/(sp|cxnSp|grpSp|contentPart|pic)$/;
const chartFrame = /\/graphicFrame\//;
const otherWords: Readonly<Record<string, string>> = {
  sp: "a text box or shape",
  cxnSp: "a line",
  grpSp: "a group of shapes",
  contentPart: "an ink drawing",
  pic: "a picture within a group",
};
const mostDrawn = 1000;
/** Some 500 ft, past all sheets. */
const farthest = 6e9;

type Numbers = Record<string, number>;

/** What one anchor has told so far. */
interface Heard {
  moves: string;
  readonly corners: Record<string, Numbers>;
  anchorSize: Numbers;
  ownSize: Numbers;
  position: Numbers;
  name: string;
  description: string;
  link: string | undefined;
  turned: number;
  across: boolean;
  down: boolean;
  readonly cut: Record<Side, number>;
  isPicture: boolean;
}

const silence = (): Heard => ({
  moves: "twoCell",
  corners: { from: {}, to: {} },
  anchorSize: {},
  ownSize: {},
  position: {},
  name: "",
  description: "",
  link: undefined,
  turned: 0,
  across: false,
  down: false,
  cut: { l: 0, t: 0, r: 0, b: 0 },
  isPicture: false,
});

/** Reads the pictures of a drawing part (ISO/IEC 29500-1 §20.5), and what else but charts it holds. */
export function readDrawing(from: Package, part: string): Drawing {
  const pictures: Placed[] = [];
  const others: string[] = [];
  let heard = silence();
  let digits = "";
  from.walk(part, {
    namespaces: drawing,
    root: "wsDr",
    open(path, attributes) {
      digits = "";
      if (anchorPath.test(path)) {
        heard = silence();
        heard.moves = attributes.editAs?.value ?? "twoCell";
      } else if (picturePath.test(path)) hear(heard, path, attributes);
      else if (/Anchor\/ext$/.test(path)) heard.anchorSize = numbersOf(attributes, "cx", "cy");
      else if (/Anchor\/pos$/.test(path)) heard.position = numbersOf(attributes, "x", "y");
      else noteOther(others, path);
    },
    text(path, piece) {
      if (cornerPath.test(path)) digits = (digits + piece).slice(0, 20);
    },
    close(path) {
      const [, end = "", axis = ""] = cornerPath.exec(path) ?? [];
      const corner = heard.corners[end];
      if (corner !== undefined) corner[axis] = whole(digits);
      if (!anchorPath.test(path) || !heard.isPicture || pictures.length >= mostDrawn) return;
      pictures.push(placed(heard));
    },
  });
  return { pictures, others };
}

function noteOther(others: string[], path: string): void {
  const what = otherWords[otherPath.exec(path)?.[1] ?? ""];
  const within = /\/grpSp\/|\/sp\/|\/cxnSp\//.test(path) || chartFrame.test(path);
  if (what !== undefined && !within && others.length < mostDrawn) others.push(what);
}

function hear(heard: Heard, path: string, attributes: Attributes): void {
  if (path.endsWith("/pic")) heard.isPicture = true;
  else if (path.endsWith("/nvPicPr/cNvPr")) {
    heard.name = (attributes.name?.value ?? "").slice(0, 250);
    heard.description = (attributes.descr?.value ?? "").slice(0, 2000);
  } else if (path.endsWith("/blipFill/blip")) {
    heard.link = Object.values(attributes).find(
      ({ local, uri }) => local === "embed" && relationships.has(uri),
    )?.value;
  } else if (path.endsWith("/blipFill/srcRect")) {
    for (const side of sides) heard.cut[side] = whole(attributes[side]?.value ?? "0") || 0;
  } else if (path.endsWith("/spPr/xfrm")) {
    heard.turned = whole(attributes.rot?.value ?? "0") || 0;
    heard.across = isOn(attributes.flipH?.value);
    heard.down = isOn(attributes.flipV?.value);
  } else if (path.endsWith("/spPr/xfrm/ext")) heard.ownSize = numbersOf(attributes, "cx", "cy");
}

const isOn = (value: string | undefined): boolean => value === "1" || value === "true";

/** A whole number as the file writes it; NaN for anything else. */
const whole = (text: string): number =>
  /^\s*-?\d{1,12}\s*$/.test(text) ? Number(text) : Number.NaN;

const numbersOf = (attributes: Attributes, ...names: readonly string[]): Numbers =>
  Object.fromEntries(names.map((name) => [name, whole(attributes[name]?.value ?? "")]));

const placed = (heard: Heard): Placed => ({
  name: heard.name,
  description: heard.description,
  link: heard.link,
  turned: heard.turned,
  mirrored: { across: heard.across, down: heard.down },
  cut: heard.cut,
  place: placeOf(heard),
});

/**
 * A picture keeps its size where it is told: rows that take more or less height than before would
 * squeeze one that hangs by two corners. One that is turned keeps both, since its box is told otherwise.
 */
function placeOf({
  corners,
  ownSize,
  anchorSize,
  position,
  turned,
  moves,
}: Heard): Place | undefined {
  const [from, to] = [cornerOf(corners.from), cornerOf(corners.to)];
  const size =
    sizeOf(anchorSize) ?? (to === undefined || turned === 0 ? sizeOf(ownSize) : undefined);
  if (from !== undefined && size !== undefined) return { by: "cell", from, size };
  if (from !== undefined && to !== undefined) return { by: "cells", from, to, moves };
  const { x = Number.NaN, y = Number.NaN } = position;
  if (size === undefined || !inReach(x) || !inReach(y)) return undefined;
  return { by: "page", x, y, size };
}

const inReach = (length: number): boolean => length >= 0 && length <= farthest;

function sizeOf({ cx = 0, cy = 0 }: Numbers): { width: number; height: number } | undefined {
  const told = cx > 0 && cy > 0 && inReach(cx) && inReach(cy);
  return told ? { width: cx, height: cy } : undefined;
}

function cornerOf(heard: Numbers | undefined): Corner | undefined {
  const { col = Number.NaN, colOff = 0, row = Number.NaN, rowOff = 0 } = heard ?? {};
  if (!(col >= 0 && col < 16384 && row >= 0 && row < 1048576)) return undefined;
  const offset = (length: number) => (inReach(length) ? length : 0);
  return { column: col, columnOffset: offset(colOff), row, rowOffset: offset(rowOff) };
}
