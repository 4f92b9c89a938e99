import * as zlib from "node:zlib";

const table = Uint32Array.from({ length: 256 }, (_, byte) => {
  let value = byte;
  for (let bit = 0; bit < 8; bit++) value = value & 1 ? 0xedb88320 ^ (value >>> 1) : value >>> 1;
  return value;
});

/** The CRC-32 of a zip entry (APPNOTE.TXT §4.4.7), as an unsigned number; for Node before 20.15. */
export function crc32ByTable(bytes: Uint8Array): number {
  let value = 0xffffffff;
  for (let at = 0; at < bytes.length; at++) {
    value = (table[(value ^ (bytes[at] as number)) & 0xff] as number) ^ (value >>> 8);
  }
  return (value ^ 0xffffffff) >>> 0;
}

/** The same, by zlib where it offers it. */
export const crc32: (bytes: Uint8Array) => number =
  (zlib as { crc32?: (bytes: Uint8Array) => number }).crc32 ?? crc32ByTable;
