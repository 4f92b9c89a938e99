import { decoded, isPlain } from "./plain-xml.js";
import { textOf } from "./text.js";

/** The shared texts of a workbook, by their places from 0. */
export interface SharedTexts {
  readonly length: number;
  at(place: number): string | undefined;
}

/** The shared texts of a workbook where each is one text without runs. */
export interface PlainStrings {
  readonly strings: SharedTexts;
  /** Elements and attributes. */
  readonly markup: number;
}

const root = /^(?:<\?xml [^<>]*\?>)?\s*<sst [^<>]*[^<>/]>/;
const item = /<si><t( xml:space="(?:preserve|default)")?(?:\/>|>([^<]*)<\/t>)<\/si>/y;
const [opening, ending] = ["<si><t>", "</t></si>"] as const;
const closing = "</sst>";
/** Beyond these they are read one element after another, as any XML is. */
const most = 100_000;
const preserved = ' xml:space="preserve"';

/**
 * The shared texts as our writer and other programs write them, and the text around them with none. Undefined for
 * whatever is written otherwise: that is for the reader of any XML to judge.
 *
 * @param text of bytes, without control characters, and with line feeds alone
 */
export function plainStringsIn(text: string): { outside: string; found: PlainStrings } | undefined {
  const from = root.exec(text)?.[0].length;
  const to = text.lastIndexOf(closing);
  if (from === undefined || to < from || !isPlain(text.slice(from, to))) return undefined;
  const strings = new Strings(text);
  let markup = 0;
  for (let at = from; at < to; ) {
    if (strings.length >= most) return undefined;
    const start = at + opening.length;
    const end = text.startsWith(opening, at) ? text.indexOf("<", start) : -1;
    if (end >= 0 && text.startsWith(ending, end)) {
      strings.add(start, end, false);
      markup += 2;
      at = end + ending.length;
      continue;
    }
    item.lastIndex = at;
    const match = item.exec(text);
    if (match === null) return undefined;
    const [whole, space, raw = ""] = match;
    const begin = raw === "" ? at : at + whole.indexOf(">", opening.length - 1) + 1;
    strings.add(begin, begin + raw.length, space === preserved);
    markup += space === undefined ? 2 : 3;
    at = item.lastIndex;
  }
  return { outside: text.slice(0, from) + text.slice(to), found: { strings, markup } };
}

/** Texts by where they stand in a whole: few of thousands are ever asked for. */
class Strings implements SharedTexts {
  readonly #starts: number[] = [];
  readonly #ends: number[] = [];
  readonly #isKept: boolean[] = [];
  readonly #made = new Map<number, string>();

  constructor(private readonly whole: string) {}

  get length(): number {
    return this.#starts.length;
  }

  /** @param isKept are the spaces at its ends a part of it? */
  add(start: number, end: number, isKept: boolean): void {
    this.#starts.push(start);
    this.#ends.push(end);
    this.#isKept.push(isKept);
  }

  at(place: number): string | undefined {
    const start = this.#starts[place];
    if (start === undefined) return undefined;
    const known = this.#made.get(place);
    if (known !== undefined) return known;
    const space = this.#isKept[place] ? "preserve" : undefined;
    const made = textOf(decoded(this.whole.slice(start, this.#ends[place])), space);
    this.#made.set(place, made);
    return made;
  }
}
