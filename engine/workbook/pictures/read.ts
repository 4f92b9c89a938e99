import { defaultLimits } from "../read/limits.js";
import { Package } from "../read/package.js";
import type { Relationship } from "../read/relationships.js";
import { readWorkbookPart } from "../read/workbook-part.js";
import { kindOf, type Picture } from "./picture.js";
import { readDrawing } from "./read-drawing.js";

/** The pictures of a workbook, and what is drawn in it that cannot be carried into another one. */
export interface Pictures {
  readonly pictures: readonly Picture[];
  /** Sheet and thing in words: `Walk: a text box or shape`. */
  readonly left: readonly string[];
}

/** How many pictures are carried, and how large they may be, in bytes. */
export const pictureLimits = { count: 200, each: 16e6, all: 48e6 };

/**
 * Reads the pictures that people put on the sheets of a workbook: PNG, JPEG and GIF, told by their
 * first bytes. Nothing of a picture is drawn or unpacked further. Throws WorkbookRefused as `readWorkbook` does.
 */
export function readPictures(bytes: Uint8Array, limits = pictureLimits): Pictures {
  const from = new Package(bytes);
  const main = from.relationshipsOf("").find(({ type }) => type === "officeDocument")?.target;
  if (main === undefined || !from.has(main)) return { pictures: [], left: [] };
  const parts = new Map(from.relationshipsOf(main).map(({ id, target }) => [id, target]));
  const pictures: Picture[] = [];
  const left: string[] = [];
  const files = new Files(bytes, limits);
  for (const { name: sheet, relationshipId } of readWorkbookPart(from, main).sheets) {
    const part = parts.get(relationshipId);
    if (part === undefined) continue;
    const links = from.relationshipsOf(part);
    const leave = (what: string) => left.push(`${sheet}: ${what}`);
    for (const what of outsideGrid(from, links)) leave(what);
    for (const { type, target } of links) {
      if (type !== "drawing" || target === undefined || !from.has(target)) continue;
      const drawn = readDrawing(from, target);
      for (const what of drawn.others) leave(what);
      const targets = new Map(from.relationshipsOf(target).map((one) => [one.id, one.target]));
      for (const { link = "", place, ...rest } of drawn.pictures) {
        const file = files.read(targets.get(link));
        if (typeof file === "string") leave(file);
        else if (place === undefined) leave("a picture without a place");
        else if (pictures.length >= limits.count) leave(`a picture past the first ${limits.count}`);
        else pictures.push({ ...rest, ...file, place, sheet });
      }
    }
  }
  return { pictures, left };
}

/** Pictures behind the cells and in the margins of the page. */
function outsideGrid(from: Package, links: readonly Relationship[]): string[] {
  return links.flatMap(({ type, target }) => {
    if (type === "image") return ["a picture behind the cells"];
    const inMargin =
      type === "vmlDrawing" &&
      target !== undefined &&
      from.relationshipsOf(target).some((one) => one.type === "image");
    return inMargin ? ["a picture in the margin of the page"] : [];
  });
}

const megabytes = (bytes: number): string => `${(bytes / 1e6).toFixed(1)} MB`;

type File = Pick<Picture, "kind" | "bytes">;

/** The files of pictures, each read once however often it stands on a sheet. */
class Files {
  readonly #media: Package;
  readonly #read = new Map<string, File | string>();
  #total = 0;

  constructor(
    bytes: Uint8Array,
    private readonly limits: typeof pictureLimits,
  ) {
    // what is told of a picture here comes first; the list of content types counts among the bytes too
    this.#media = new Package(bytes, {
      partBytes: Math.max(limits.each, defaultLimits.partBytes),
      unpackedBytes: limits.all + defaultLimits.partBytes,
    });
  }

  /** The picture in a part, or why it is left. */
  read(part: string | undefined): File | string {
    if (part === undefined || !this.#media.has(part)) {
      return "a picture whose file lies outside the workbook";
    }
    const known = this.#read.get(part) ?? this.#fresh(part);
    this.#read.set(part, known);
    return known;
  }

  #fresh(part: string): File | string {
    const { each, all } = this.limits;
    const size = this.#media.sizeOf(part);
    if (size > each) return `a picture of ${megabytes(size)}, over ${megabytes(each)}`;
    if (this.#total + size > all) return `a picture past ${megabytes(all)} in all`;
    this.#total += size;
    const bytes = this.#media.bytes(part);
    const kind = kindOf(bytes);
    return kind === undefined ? "a picture that is neither PNG, JPEG nor GIF" : { kind, bytes };
  }
}
