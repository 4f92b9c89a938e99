import type { Model } from "../../template/model.js";
import { Archive } from "../write/archive.js";
import { paperColumnWidth } from "../write/grid.js";
import { sheetPart } from "../write/parts.js";
import { logoName, type Picture, type PictureFile } from "./picture.js";
import { withPictures } from "./place.js";
import { readPictures } from "./read.js";
import { type Slot, slotsOf } from "./slots.js";

const emuInPoint = 12700;
/** Points kept free around it. */
const margin = 2;

/**
 * Puts the office's logo into the places that the pages keep for it, as large as it fits, at the right edge. A place in
 * which a person put a picture stays theirs; a page that takes no paper gets none. The same arguments give the same bytes.
 */
export function withLogo(bid: Uint8Array, model: Model, logo: PictureFile | undefined): Uint8Array {
  if (logo === undefined) return bid;
  const parts = new Archive(bid);
  const taken = readPictures(bid).pictures;
  const isTaken = (slot: Slot) =>
    taken.some(({ sheet, place }) => {
      if (sheet !== slot.sheet || place.by === "page") return false;
      const [row, column] = [place.from.row + 1, place.from.column + 1];
      return (
        within(slot.from.row, row, slot.to.row) && within(slot.from.column, column, slot.to.column)
      );
    });
  const pictures = slotsOf(model)
    .filter((slot) => slot.look === "logo" && !isTaken(slot))
    .flatMap((slot): Picture[] => {
      const heights = rowHeights(parts, slot);
      return heights === undefined ? [] : [placed(slot, heights, logo)];
    });
  return withPictures(bid, pictures);
}

const within = (least: number, value: number, most: number) => value >= least && value <= most;

/** Points of the rows of a slot; undefined where they are hidden. */
function rowHeights(parts: Archive, { sheet, from, to }: Slot): number[] | undefined {
  const xml = parts.text(sheetPart(parts, sheet));
  const heights: number[] = [];
  for (let row = from.row; row <= to.row; row++) {
    const tag = new RegExp(`<row r="${row}"[^>]*>`).exec(xml)?.[0] ?? "";
    if (/ hidden="(1|true)"/.test(tag)) return undefined;
    heights.push(Number(/ ht="([\d.]+)"/.exec(tag)?.[1] ?? 0));
  }
  return heights;
}

function placed({ sheet, from, to }: Slot, heights: readonly number[], logo: PictureFile): Picture {
  const widths = Array.from(
    { length: to.column - from.column + 1 },
    () => (paperColumnWidth * 7 + 5) * 0.75,
  );
  return logoPicture(sheet, from, widths, heights, logo);
}

/**
 * The logo over some cells, as large as it fits them, at their right edge and halfway down.
 *
 * @param first the upper left cell, from 1
 * @param widths points of the columns
 * @param heights points of the rows
 */
export function logoPicture(
  sheet: string,
  first: { readonly row: number; readonly column: number },
  widths: readonly number[],
  heights: readonly number[],
  logo: PictureFile,
): Picture {
  const [wide, high] = [sum(widths), sum(heights)];
  const scale = Math.min((wide - 2 * margin) / logo.width, (high - 2 * margin) / logo.height);
  const [width, height] = [logo.width * scale, logo.height * scale];
  const across = cornerAt(widths, wide - margin - width);
  const down = cornerAt(heights, (high - height) / 2);
  const emu = (points: number) => Math.round(points * emuInPoint);
  return {
    sheet,
    kind: logo.kind,
    bytes: logo.bytes,
    name: logoName,
    description: "Logo of the company",
    place: {
      by: "cell",
      from: {
        column: first.column - 1 + across.cell,
        columnOffset: emu(across.offset),
        row: first.row - 1 + down.cell,
        rowOffset: emu(down.offset),
      },
      size: { width: emu(width), height: emu(height) },
    },
    turned: 0,
    mirrored: { across: false, down: false },
    cut: { l: 0, t: 0, r: 0, b: 0 },
  };
}

const sum = (lengths: readonly number[]): number => lengths.reduce((all, one) => all + one, 0);

/** In which cell a length from the first one ends, and how far in it: an offset past its cell is cut off by programs. */
function cornerAt(lengths: readonly number[], length: number): { cell: number; offset: number } {
  let cell = 0;
  let offset = length;
  while (cell < lengths.length - 1 && offset >= (lengths[cell] as number)) {
    offset -= lengths[cell] as number;
    cell += 1;
  }
  return { cell, offset };
}
