/** Widths of the usual sans-serif type, in thousandths of its size, from the space to the tilde (from memory). */
const widths =
  "278 278 355 556 556 889 667 191 333 333 389 584 278 333 278 278 556 556 556 556 556 556 556 556 556 556 278 278 584 584 584 556 1015 667 667 722 722 667 611 778 722 278 500 667 556 833 722 778 667 778 722 667 611 722 667 944 667 667 611 278 278 278 469 556 333 556 556 500 556 556 278 556 556 222 222 500 222 833 556 556 556 556 333 500 278 556 500 722 500 500 500 334 260 334 584"
    .split(" ")
    .map(Number);
const other = 600;
/** And of signs beyond it that pages use. */
const further: ReadonlyMap<string, number> = new Map([
  ["°", 400],
  ["²", 333],
  ["³", 333],
  ["•", 350],
  ["\u00a0", 278],
  ["×", 584],
  ["·", 333],
]);

const widthOf = (text: string): number => {
  let sum = 0;
  for (const sign of text) sum += widths[sign.charCodeAt(0) - 32] ?? further.get(sign) ?? other;
  return sum;
};

/**
 * How many lines a text takes at a size of type (points) in a width (points): word by word, as programs
 * wrap; a word that is wider takes as many as it needs. Bold type is wider.
 */
export function linesIn(text: string, width: number, size: number, bold = false): number {
  const room = (width * 1000) / (size * (bold ? 1.07 : 1));
  return text.split("\n").reduce((sum, part) => sum + wrapped(part, room), 0);
}

function wrapped(text: string, room: number): number {
  let lines = 1;
  let used = 0;
  for (const word of text.split(" ")) {
    const width = widthOf(word);
    const wanted = used === 0 ? width : used + 278 + width;
    if (wanted <= room) {
      used = wanted;
      continue;
    }
    if (used > 0) lines += 1;
    lines += Math.max(0, Math.ceil(width / room) - 1);
    used = width % room || width;
  }
  return lines;
}

/** Points that a stretch of columns gives to text: programs keep a little of each cell for themselves. */
export const roomIn = (widths: readonly number[]): number =>
  widths.reduce((sum, width) => sum + (width * 7 + 5) * 0.75, 0) * 0.955 - 4;

/** The height in points that a text wants, wrapped over a stretch of columns so many digits wide. */
export const wrappedHeight = (
  text: string,
  widths: readonly number[],
  { size = 10, bold = false }: { readonly size?: number; readonly bold?: boolean } = {},
): number => linesIn(text, roomIn(widths), size, bold) * size * 1.275 + 1;
