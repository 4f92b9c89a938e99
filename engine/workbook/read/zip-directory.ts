import { endMark, endSize, entryMark, entrySize, localMark, localSize } from "../zip-format.js";
import type { Budget } from "./limits.js";
import { damaged, WorkbookRefused } from "./refused.js";

/** One file in a zip archive, as the central directory describes it. Nothing of it is to be trusted. */
export interface ZipEntry {
  readonly name: string;
  readonly method: number;
  readonly crc: number;
  readonly packed: number;
  readonly unpacked: number;
  /** Where its packed bytes begin in the archive. */
  readonly start: number;
}

/**
 * Reads the directory of a zip archive (APPNOTE.TXT §4.3) without unpacking anything.
 * Throws WorkbookRefused for a directory that contradicts itself or the file, for encrypted, oddly
 * named, repeated or overlapping entries, and for more entries than the limit.
 */
export function readDirectory(bytes: Uint8Array, budget: Budget): ZipEntry[] {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.length);
  const end = findEnd(view);
  const count = view.getUint16(end + 10, true);
  const directory = view.getUint32(end + 16, true);
  if (view.getUint16(end + 4, true) !== 0 || view.getUint16(end + 8, true) !== count) {
    throw damaged("The workbook claims to be one of several volumes, which no workbook is");
  }
  budget.check("entries", count, "The workbook");
  if (directory + view.getUint32(end + 12, true) > end) {
    throw damaged("The list of parts in the workbook lies outside the file");
  }
  const entries: ZipEntry[] = [];
  const seen = new Set<string>();
  let at = directory;
  for (let index = 0; index < count; index++) {
    if (at + entrySize > end || view.getUint32(at, true) !== entryMark) {
      throw damaged(
        `The list of parts in the workbook breaks off after ${index} of ${count} parts`,
      );
    }
    const entry = readEntry(bytes, view, at, directory);
    if (seen.has(entry.name.toLowerCase())) {
      throw unsafe(`The workbook holds two parts named ${JSON.stringify(entry.name)}`);
    }
    seen.add(entry.name.toLowerCase());
    entries.push(entry);
    at +=
      entrySize + [28, 30, 32].reduce((sum, field) => sum + view.getUint16(at + field, true), 0);
  }
  refuseOverlap(entries);
  return entries;
}

function findEnd(view: DataView): number {
  const lowest = Math.max(0, view.byteLength - endSize - 0xffff);
  for (let at = view.byteLength - endSize; at >= lowest; at--) {
    if (view.getUint32(at, true) === endMark) return at;
  }
  throw damaged("The workbook has no list of parts at its end, as if it was cut off in copying");
}

function readEntry(bytes: Uint8Array, view: DataView, at: number, directory: number): ZipEntry {
  const nameEnd = at + entrySize + view.getUint16(at + 28, true);
  const name = nameOf(bytes.subarray(at + entrySize, nameEnd));
  const sizes = sizesOf(view, at, nameEnd, name);
  if ((view.getUint16(at + 8, true) & 1) !== 0) {
    throw new WorkbookRefused(
      "workbook-encrypted",
      `Part ${name} of the workbook is encrypted. Take the password off and save it again.`,
    );
  }
  const local = sizes.local;
  if (local + localSize > directory || view.getUint32(local, true) !== localMark) {
    throw damaged(`Part ${name} of the workbook is not where its list of parts says`);
  }
  const localNameEnd = local + localSize + view.getUint16(local + 26, true);
  if (nameOf(bytes.subarray(local + localSize, localNameEnd)) !== name) {
    throw damaged(`Part ${name} of the workbook has another name in its list of parts`);
  }
  const start = localNameEnd + view.getUint16(local + 28, true);
  if (start + sizes.packed > directory) throw damaged(`Part ${name} of the workbook is cut off`);
  return {
    name,
    method: view.getUint16(at + 10, true),
    crc: view.getUint32(at + 16, true),
    packed: sizes.packed,
    unpacked: sizes.unpacked,
    start,
  };
}

/** Sizes and place; some programs put them in the Zip64 extra field (APPNOTE.TXT §4.5.3) without need. */
function sizesOf(view: DataView, at: number, extraStart: number, name: string) {
  const sizes = {
    unpacked: view.getUint32(at + 24, true),
    packed: view.getUint32(at + 20, true),
    local: view.getUint32(at + 42, true),
  };
  const extraEnd = Math.min(extraStart + view.getUint16(at + 30, true), view.byteLength);
  for (let field = extraStart; field + 4 <= extraEnd; ) {
    const length = view.getUint16(field + 2, true);
    if (view.getUint16(field, true) === 1) {
      let value = field + 4;
      for (const key of ["unpacked", "packed", "local"] as const) {
        if (sizes[key] !== 0xffffffff || value + 8 > Math.min(field + 4 + length, extraEnd))
          continue;
        sizes[key] = Number(view.getBigUint64(value, true));
        value += 8;
      }
    }
    field += 4 + length;
  }
  if (sizes.unpacked === 0xffffffff || sizes.packed === 0xffffffff) {
    throw damaged(`Part ${name} of the workbook states no size`);
  }
  return sizes;
}

/** A part's name must be a plain relative path: no way out of the archive, no second spelling. */
function nameOf(bytes: Uint8Array): string {
  const name = Buffer.from(bytes).toString("utf8");
  // biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what is refused
  if (name === "" || /^\/|[\\\0-\x1f\ufffd]|^[A-Za-z]:|(?:^|\/)\.\.?(?:\/|$)|\/\//.test(name)) {
    throw unsafe(`The workbook holds a part named ${JSON.stringify(name.slice(0, 80))}`);
  }
  return name;
}

function refuseOverlap(entries: readonly ZipEntry[]): void {
  const sorted = [...entries].sort((a, b) => a.start - b.start);
  sorted.forEach((entry, index) => {
    const next = sorted[index + 1];
    if (next !== undefined && entry.start + entry.packed + localSize > next.start) {
      throw unsafe(`Parts ${entry.name} and ${next.name} of the workbook overlap`);
    }
  });
}

function unsafe(what: string): WorkbookRefused {
  return new WorkbookRefused(
    "workbook-unsafe",
    `${what}. No spreadsheet program writes such a file: ask the sender how it was made, and save it again as .xlsx.`,
  );
}
