import { gzip, gzipSync } from "node:zlib";
import { endMark, endSize, entryMark, entrySize, localMark, localSize } from "../zip-format.js";

/** A file as a zip archive keeps it: deflated, with its checksum and its size in bytes. */
export interface Packed {
  readonly name: string;
  readonly deflated: Uint8Array;
  readonly crc: number;
  readonly size: number;
}

/** How hard to look for what repeats: as usual, or not at all for what is read again at once. */
export type Level = 6 | 0;

/** Bytes from which on another thread is worth its while. */
const large = 2e4;

/** Deflates a file, a large one in another thread. */
export function packing(name: string, bytes: Uint8Array, level: Level): Promise<Packed> {
  if (bytes.length < large) return Promise.resolve(packedNow(name, bytes, level));
  return new Promise((done, failed) => {
    gzip(bytes, optionsFor(bytes, level), (error, result) => {
      if (error === null) done(packedFrom(name, result));
      else failed(error);
    });
  });
}

/** Deflates a file at once. */
export const packedNow = (name: string, bytes: Uint8Array, level: Level): Packed =>
  packedFrom(name, gzipSync(bytes, optionsFor(bytes, level)));

/** One piece of room for the whole result, which zlib fills without asking for more. */
const optionsFor = (bytes: Uint8Array, level: Level) => ({
  level,
  chunkSize: Math.max(1024, Math.ceil(bytes.length * 1.01) + 64),
});

const gzipHead = 10;
const gzipTail = 8;

/** A gzip file (RFC 1952) is what a zip archive wants, between ten bytes of head and a tail of checksum and size. */
function packedFrom(name: string, gzipped: Buffer): Packed {
  const end = gzipped.length - gzipTail;
  return {
    name,
    deflated: gzipped.subarray(gzipHead, end),
    crc: gzipped.readUInt32LE(end),
    size: gzipped.readUInt32LE(end + 4),
  };
}

const version = 20;
const method = 8;
const namesInUtf8 = 0x800;
/** 1 January 1980, the format's own earliest date, so that equal files give equal archives. */
const fixedDate = (1 << 5) | 1;

/** A zip archive of files in the order given (APPNOTE.TXT 4.3). */
export function zipOf(files: readonly Packed[]): Uint8Array {
  const named = files.map((file) => ({ ...file, bytes: Buffer.from(file.name) }));
  const local = (one: (typeof named)[number]) => localSize + one.bytes.length + one.deflated.length;
  const body = named.reduce((sum, one) => sum + local(one), 0);
  const directory = named.reduce((sum, { bytes }) => sum + entrySize + bytes.length, 0);
  const archive = Buffer.alloc(body + directory + endSize);
  let at = 0;
  let listed = body;
  for (const one of named) {
    const { bytes, deflated } = one;
    archive.writeUInt32LE(localMark, at);
    writeCommon(archive, at + 4, one);
    archive.set(bytes, at + localSize);
    archive.set(deflated, at + localSize + bytes.length);
    archive.writeUInt32LE(entryMark, listed);
    archive.writeUInt16LE(version, listed + 4);
    writeCommon(archive, listed + 6, one);
    archive.writeUInt32LE(at, listed + 42);
    archive.set(bytes, listed + entrySize);
    at += local(one);
    listed += entrySize + bytes.length;
  }
  archive.writeUInt32LE(endMark, listed);
  archive.writeUInt16LE(named.length, listed + 8);
  archive.writeUInt16LE(named.length, listed + 10);
  archive.writeUInt32LE(directory, listed + 12);
  archive.writeUInt32LE(body, listed + 16);
  return new Uint8Array(archive.buffer, archive.byteOffset, archive.length);
}

/** What the head of a file and its line in the directory say alike. */
function writeCommon(archive: Buffer, at: number, file: Packed & { readonly bytes: Buffer }) {
  archive.writeUInt16LE(version, at);
  archive.writeUInt16LE(file.bytes.length === file.name.length ? 0 : namesInUtf8, at + 2);
  archive.writeUInt16LE(method, at + 4);
  archive.writeUInt16LE(fixedDate, at + 8);
  archive.writeUInt32LE(file.crc, at + 10);
  archive.writeUInt32LE(file.deflated.length, at + 14);
  archive.writeUInt32LE(file.size, at + 18);
  archive.writeUInt16LE(file.bytes.length, at + 22);
}
