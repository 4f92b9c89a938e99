import { decoded, isPlain } from "./plain-xml.js";
import { textOf } from "./text.js";

/** The shared texts of a workbook where each is one text without runs. */
export interface PlainStrings {
  readonly strings: readonly string[];
  /** Elements and attributes. */
  readonly markup: number;
}

const root = /^(?:<\?xml [^<>]*\?>)?\s*<sst [^<>]*[^<>/]>/;
const item = /<si><t( xml:space="(?:preserve|default)")?(?:\/>|>([^<]*)<\/t>)<\/si>/y;
const closing = "</sst>";
/** Beyond these they are read one element after another, as any XML is. */
const most = 100_000;
const preserved = ' xml:space="preserve"';

/**
 * The shared texts as our writer and other programs write them, and the text around them with none. Undefined for
 * whatever is written otherwise: that is for the reader of any XML to judge.
 *
 * @param text without control characters, and with line feeds alone
 */
export function plainStringsIn(text: string): { outside: string; found: PlainStrings } | undefined {
  const from = root.exec(text)?.[0].length;
  const to = text.lastIndexOf(closing);
  if (from === undefined || to < from || !isPlain(text.slice(from, to))) return undefined;
  const strings: string[] = [];
  let markup = 0;
  for (let at = from; at < to; at = item.lastIndex) {
    item.lastIndex = at;
    const match = item.exec(text);
    if (match === null || strings.length >= most) return undefined;
    const [, space, raw = ""] = match;
    markup += space === undefined ? 2 : 3;
    strings.push(textOf(decoded(raw), space === preserved ? "preserve" : undefined));
  }
  return { outside: text.slice(0, from) + text.slice(to), found: { strings, markup } };
}
