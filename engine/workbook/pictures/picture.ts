/** Kinds of pictures that every spreadsheet program shows, by the ending of their files. */
export type PictureKind = "png" | "jpeg" | "gif";

/** A corner in the grid: row and column from 0, and how far into the cell, in EMU (1/914400 in). */
export interface Corner {
  readonly column: number;
  readonly columnOffset: number;
  readonly row: number;
  readonly rowOffset: number;
}

/** Width and height in EMU. */
export interface Size {
  readonly width: number;
  readonly height: number;
}

/** Where a picture lies on its sheet. */
export type Place =
  | { readonly by: "cell"; readonly from: Corner; readonly size: Size }
  | { readonly by: "cells"; readonly from: Corner; readonly to: Corner; readonly moves: string }
  | { readonly by: "page"; readonly x: number; readonly y: number; readonly size: Size };

/** A picture that somebody put on a sheet. */
export interface Picture {
  readonly sheet: string;
  readonly kind: PictureKind;
  readonly bytes: Uint8Array;
  readonly name: string;
  /** What it shows, in words for who cannot see it. */
  readonly description: string;
  readonly place: Place;
  /** Turned, in 60,000ths of a degree. */
  readonly turned: number;
  readonly mirrored: { readonly across: boolean; readonly down: boolean };
  /** What is cut off at each side, in 1,000ths of a percent. */
  readonly cut: Readonly<Record<Side, number>>;
}

export const sides = ["l", "t", "r", "b"] as const;
export type Side = (typeof sides)[number];

/** A file of a picture, its size in pixels. */
export interface PictureFile {
  readonly kind: PictureKind;
  readonly bytes: Uint8Array;
  readonly width: number;
  readonly height: number;
}

/** What the office's logo is called on a sheet: each bid puts it there anew. */
export const logoName = "Logo of the office book";

/** The kind of a picture by the bytes it begins with; undefined for all that is not carried. */
export function kindOf(bytes: Uint8Array): PictureKind | undefined {
  const begins = (...wanted: readonly number[]) => wanted.every((byte, i) => bytes[i] === byte);
  if (begins(0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a)) return "png";
  if (begins(0xff, 0xd8, 0xff)) return "jpeg";
  if (begins(0x47, 0x49, 0x46, 0x38) && (bytes[4] === 0x37 || bytes[4] === 0x39)) return "gif";
  return undefined;
}
