import { RillbookError } from "../errors.js";

/** One of several runs that share the files among them without talking to one another. */
export interface Part {
  readonly part: number;
  readonly of: number;
}

/** `3/16`: the third of sixteen. Throws RillbookError for anything else. */
export function partOf(written: string): Part {
  const match = /^(\d{1,5})\/(\d{1,5})$/.exec(written);
  const [part, of] = [Number(match?.[1]), Number(match?.[2])];
  if (match !== null && part >= 1 && part <= of) return { part, of };
  throw new RillbookError(
    "part-invalid",
    `--part is ${JSON.stringify(written)}, but must be like 3/16: the third of sixteen, counted from 1.`,
  );
}

/** Does a file belong to the part? By its path alone, so that files that come or go move no other. */
export function inPart(path: string, { part, of }: Part): boolean {
  return hash(path) % of === part - 1;
}

/** FNV-1a over UTF-16 units, 32 bits (Fowler, Noll, Vo; IETF draft-eastlake-fnv, from memory). */
function hash(text: string): number {
  let state = 0x811c9dc5;
  for (let i = 0; i < text.length; i++) {
    state = Math.imul(state ^ text.charCodeAt(i), 0x01000193);
  }
  // the low bits alone spread badly
  return (state ^ (state >>> 15)) >>> 0;
}
