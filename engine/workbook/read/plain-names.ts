import { attributesIn } from "./plain-attributes.js";
import { decoded, isPlain } from "./plain-xml.js";

/** A defined name as its element says it. */
export interface WrittenName {
  readonly name: string;
  readonly text: string;
  readonly hidden: string | undefined;
  readonly localSheetId: string | undefined;
}

/** Elements and attributes among the names count as markup. */
export interface WrittenNames {
  readonly written: readonly WrittenName[];
  readonly markup: number;
}

/** The names of a workbook part, and the text around them with none. */
export interface PlainNames {
  readonly outside: string;
  /** Those that hold for the whole workbook, which jobs of one template have in common. */
  readonly common: string;
  /** Those of one sheet: what of it is printed differs from job to job. */
  readonly scoped: string;
}

const [opening, closing] = ["<definedNames>", "</definedNames>"] as const;
const [begin, end] = ["<definedName ", "</definedName>"] as const;
const scope = ' localSheetId="';
const element = /<definedName((?: [A-Za-z]+="[^"<>\t\n]*")+)>([^<]*)<\/definedName>/y;
/** Characters of a definition. */
export const longestDefinition = 16384;

/**
 * Undefined for whatever is written otherwise than our writer and other programs write it: that is for the reader of
 * any XML to judge.
 *
 * @param text of bytes, without control characters, and with line feeds alone
 */
export function plainNamesIn(text: string): PlainNames | undefined {
  const from = text.indexOf(opening) + opening.length;
  const to = text.indexOf(closing, from);
  if (from < opening.length || to < 0) return undefined;
  if (text.indexOf("<definedNames", from) >= 0 || text.indexOf(closing, to + 1) >= 0) {
    return undefined;
  }
  const inside = text.slice(from, to);
  const parted = isPlain(inside) ? partedByScope(inside) : undefined;
  return parted && { ...parted, outside: text.slice(0, from) + text.slice(to) };
}

function partedByScope(text: string): Pick<PlainNames, "common" | "scoped"> | undefined {
  let [common, scoped, done] = ["", "", 0];
  for (let at = text.indexOf(scope); at >= 0; at = text.indexOf(scope, done)) {
    const from = text.lastIndexOf(begin, at);
    const to = text.indexOf(end, at) + end.length;
    // it must be an attribute of an element that ends, and stands behind one that has ended
    if (from < done || to < end.length || text.indexOf(">", from) < at) return undefined;
    if (from > done && !text.startsWith(end, from - end.length)) return undefined;
    common += text.slice(done, from);
    scoped += text.slice(from, to);
    done = to;
  }
  return { common: common + text.slice(done), scoped };
}

/** Undefined where an element is not plain, says a thing twice, has no name, or is too long. */
export function writtenNamesIn(text: string): WrittenNames | undefined {
  const written: WrittenName[] = [];
  let markup = 0;
  for (let at = 0; at < text.length; at = element.lastIndex) {
    element.lastIndex = at;
    const match = element.exec(text);
    if (match === null) return undefined;
    const [, attributes = "", definition = ""] = match;
    const said = attributesIn(attributes);
    const name = said?.get("name");
    if (said === undefined || name === undefined || said.has("xmlns")) return undefined;
    if (definition.length > longestDefinition) return undefined;
    markup += 1 + said.size;
    const [hidden, localSheetId] = [said.get("hidden"), said.get("localSheetId")];
    written.push({ name, text: decoded(definition), hidden, localSheetId });
  }
  return { written, markup };
}
