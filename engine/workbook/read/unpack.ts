import { inflateRawSync } from "node:zlib";
import { crc32 } from "./crc32.js";
import type { Budget } from "./limits.js";
import { damaged } from "./refused.js";
import type { ZipEntry } from "./zip-directory.js";

const smallPart = 1e6;

/**
 * Unpacks one entry. Its claimed size is held against the limits before anything is unpacked, and is
 * then a hard cap, so that a false claim is caught; the checksum catches every other damage.
 * zlib rather than a JavaScript inflater: the latter rebuilds large tables at each block, and a
 * file of many tiny blocks would keep it busy for a long time.
 */
export function unpack(archive: Uint8Array, entry: ZipEntry, budget: Budget): Uint8Array {
  const part = `Part ${entry.name} of the workbook`;
  budget.check("partBytes", entry.unpacked, part);
  budget.spend("unpackedBytes", entry.unpacked, "The workbook");
  if (entry.unpacked > smallPart) {
    budget.check("ratio", entry.unpacked / Math.max(1, entry.packed), part);
  }
  // Deflate never needs more room than storing, but for a few bytes a block.
  if (entry.packed > entry.unpacked * 1.01 + 1024) throw damaged(`${part} states a false size`);
  const packed = archive.subarray(entry.start, entry.start + entry.packed);
  const bytes = inflated(packed, entry, part);
  if (bytes.length !== entry.unpacked) {
    throw damaged(`${part} holds ${bytes.length} bytes where ${entry.unpacked} are stated`);
  }
  if (crc32(bytes) !== entry.crc) throw damaged(`${part} does not match its checksum`);
  return bytes;
}

function inflated(packed: Uint8Array, entry: ZipEntry, part: string): Uint8Array {
  if (entry.method === 0) return packed;
  if (entry.method !== 8) throw damaged(`${part} is packed by method ${entry.method}, not deflate`);
  try {
    return inflateRawSync(packed, { maxOutputLength: Math.max(1, entry.unpacked) });
  } catch (error) {
    const code = (error as NodeJS.ErrnoException).code;
    throw code === "ERR_BUFFER_TOO_LARGE"
      ? damaged(`${part} holds more than the ${entry.unpacked} bytes it states`)
      : damaged(`${part} cannot be unpacked`);
  }
}
