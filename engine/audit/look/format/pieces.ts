/** A part of a format in the spelling of `code.ts`: signs of its own, and characters that stand for themselves. */
const pieces = /\\.|\[[^\]]*\]|general|am\\\/pm|a\\\/p|e\\[+-][0#?]+|[0#?]|y+|m+|d+|h+|s+|./gsu;

/** Programs take no longer codes. */
const mostPieces = 255;

/** A part of a format, piece by piece. */
export const piecesOf = (part: string): string[] => (part.match(pieces) ?? []).slice(0, mostPieces);

/** The characters of a part that stand for themselves, and a text where the part has its sign. */
export const literalsIn = (part: string, text = ""): string =>
  piecesOf(part)
    .map((piece) => literalOf(piece) ?? (piece === "@" ? text : ""))
    .join("");

/** The character that a piece stands for, where it does no more. */
export const literalOf = (piece: string): string | undefined =>
  piece[0] === "\\" ? piece.slice(1) : undefined;
