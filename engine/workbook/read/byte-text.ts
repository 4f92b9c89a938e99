import { isUtf8 } from "node:buffer";

/**
 * A text of UTF-8 of which each character stands for one byte, so that to have it costs next to nothing. Markup is
 * the same in both; what stands between it is turned over where it is wanted. Undefined for other encodings.
 */
export function byteText(bytes: Uint8Array): string | undefined {
  if (!isUtf8(bytes)) return undefined;
  const text = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.length).toString("latin1");
  return text.startsWith(mark) ? text.slice(mark.length) : text;
}

/** The bytes by which some programs say that a text is UTF-8. */
const mark = "\xef\xbb\xbf";

const beyondAscii = /[\x80-\xff]/;

/** The characters that a piece of such a text stands for. */
export function charactersOf(piece: string): string {
  return beyondAscii.test(piece) ? Buffer.from(piece, "latin1").toString("utf8") : piece;
}

/** What XML 1.0 does not allow as text, but for two characters: control characters. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: these are what is looked for
const controls = /[\0-\x08\x0b\x0c\x0e-\x1f]/;

/** Has it a character that XML forbids: a control character, U+FFFE or U+FFFF? UTF-8 has no half of a surrogate pair. */
export const hasForbidden = (text: string): boolean =>
  controls.test(text) || text.includes("\xef\xbf\xbe") || text.includes("\xef\xbf\xbf");
