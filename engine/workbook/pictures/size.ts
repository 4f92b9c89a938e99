import { kindOf, type PictureFile } from "./picture.js";

/**
 * A picture file with its size in pixels, from its head (PNG: ISO/IEC 15948 §11.2.2; JPEG: ITU-T T.81 §B.2.2).
 * Undefined for all that is neither PNG nor JPEG, or whose head does not tell a size.
 */
export function pictureFile(bytes: Uint8Array): PictureFile | undefined {
  const kind = kindOf(bytes);
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const size = kind === "png" ? pngSize(view) : kind === "jpeg" ? jpegSize(view) : undefined;
  if (kind === undefined || size === undefined || size.width === 0 || size.height === 0) {
    return undefined;
  }
  return { kind, bytes, ...size };
}

type Pixels = Pick<PictureFile, "width" | "height">;

const pngHead = 0x49484452;

function pngSize(view: DataView): Pixels | undefined {
  if (view.byteLength < 24 || view.getUint32(12) !== pngHead) return undefined;
  return { width: view.getUint32(16), height: view.getUint32(20) };
}

/** Goes from marker to marker up to the one of the frame, which tells lines and samples a line. */
function jpegSize(view: DataView): Pixels | undefined {
  let at = 2;
  while (at + 9 <= view.byteLength && view.getUint8(at) === 0xff) {
    const marker = view.getUint8(at + 1);
    if (marker === 0xff) {
      at += 1;
      continue;
    }
    // C4, C8 and CC are tables and an extension, no frames
    if (marker >= 0xc0 && marker <= 0xcf && ![0xc4, 0xc8, 0xcc].includes(marker)) {
      return { width: view.getUint16(at + 7), height: view.getUint16(at + 5) };
    }
    at += 2 + view.getUint16(at + 2);
  }
  return undefined;
}
