import { attributesIn } from "./plain-attributes.js";
import { decoded, isPlain } from "./plain-xml.js";

/** The rows of a worksheet as one list for each thing that is asked of them: thousands of cells make no objects. */
export interface PlainRows {
  /** For each row: `r` and `hidden` as written, and how many cells it has. */
  readonly rows: readonly (readonly [
    r: string | undefined,
    hidden: string | undefined,
    cells: number,
  ])[];
  readonly addresses: readonly string[];
  readonly types: readonly (string | undefined)[];
  readonly values: readonly (string | undefined)[];
  readonly hasFormula: readonly boolean[];
  /** Elements and attributes. */
  readonly markup: number;
}

const opening = "<sheetData>";
const closing = "</sheetData>";
/** `x14ac:dyDescent` is an attribute that most programs write beside their rows. */
const rowStart = /<row((?: (?!xmlns)(?:x14ac:)?[A-Za-z]+="[^"<\t\n]*")*)(\/?)>/y;
const cell =
  /<c r="([A-Z]{1,3}[1-9]\d{0,6})"( s="\d{1,6}")?(?: t="([a-z]{1,9})")?(?:\/>|>(?:<f((?: (?!xmlns)[A-Za-z]+="[^"<\t\n]*")*)(?:\/>|>[^<]*<\/f>))?(?:<v>([^<]*)<\/v>)?<\/c>)/y;
const declared = /^(?:<\?xml [^<>]*\?>)?\s*<worksheet [^<>]*xmlns:x14ac="/;
const rowEnd = "</row>";
const breaks =
  /<rowBreaks count="\d{1,5}" manualBreakCount="\d{1,5}">(?:<brk id="\d{1,7}" (?:max="\d{1,7}" man="1"|man="true" max="\d{1,7}" min="\d{1,7}")\/>)*<\/rowBreaks>/;
const footer = /(<(?:odd|even|first)(?:Header|Footer)>)([^<]*)(?=<)/g;
/** Beyond so many rows or cells they are read one element after another, as any XML is. */
const most = 30_000;
const longestValue = 32767;

/**
 * The rows of a worksheet as our writer and other programs write them, taken out of its text; the text around them is left
 * with no rows. Undefined for whatever is written otherwise: that is for the reader of any XML to judge.
 *
 * @param text without control characters, and with line feeds alone
 */
export function plainRowsIn(text: string): TakenOut | undefined {
  const from = text.indexOf(opening);
  const to = text.indexOf(closing, from);
  if (from < 0 || to < 0 || !/^(?:<\?xml [^<>]*\?>)?\s*<worksheet /.test(text)) return undefined;
  if (text.indexOf("<sheetData", from + 1) >= 0 || text.indexOf(closing, to + 1) >= 0)
    return undefined;
  const inside = text.slice(from + opening.length, to);
  if (inside.includes("x14ac:") && !declared.test(text)) return undefined;
  if (!isPlain(inside)) return undefined;
  const rows = rowsOf(inside);
  if (rows === undefined) return undefined;
  const below = withoutPages(text.slice(to));
  const outside = text.slice(0, from + opening.length) + below.text;
  return { outside, rows, markup: rows.markup + below.markup };
}

/** The rows, and the text around them. */
export interface TakenOut {
  readonly outside: string;
  readonly rows: PlainRows;
  /** Elements and attributes that were taken out. */
  readonly markup: number;
}

/**
 * How a sheet stands on paper differs from job to job, and is told to nobody: footers, which say what job it is, and
 * where pages end. Without them the sheets of many jobs have one text around their rows.
 */
function withoutPages(text: string): { text: string; markup: number } {
  let markup = 0;
  const told = text
    .replace(footer, (all, element: string, said: string) => (isPlain(said) ? element : all))
    .replace(breaks, (all) => {
      markup += all.split("<").length - 3 + all.split("=").length - 1;
      return "<rowBreaks/>";
    });
  return { text: told, markup };
}

function rowsOf(text: string): PlainRows | undefined {
  const found = new FoundRows();
  for (let at = 0; at < text.length; ) {
    rowStart.lastIndex = at;
    const row = rowStart.exec(text);
    if (row === null || found.rows.length >= most) return undefined;
    at = rowStart.lastIndex;
    const before = found.addresses.length;
    const attributes = attributesIn(row[1] as string);
    if (attributes === undefined) return undefined;
    if (row[2] === "") {
      for (let next = found.cell(text, at); next !== undefined; next = found.cell(text, at))
        at = next;
      if (!text.startsWith(rowEnd, at)) return undefined;
      at += rowEnd.length;
    }
    found.markup += 1 + attributes.size;
    found.rows.push([
      attributes.get("r"),
      attributes.get("hidden"),
      found.addresses.length - before,
    ]);
  }
  return found.isWhole ? found : undefined;
}

class FoundRows {
  readonly rows: [string | undefined, string | undefined, number][] = [];
  readonly addresses: string[] = [];
  readonly types: (string | undefined)[] = [];
  readonly values: (string | undefined)[] = [];
  readonly hasFormula: boolean[] = [];
  markup = 0;
  isWhole = true;

  /** Takes a cell; gives where it ends, undefined where none stands. */
  cell(text: string, at: number): number | undefined {
    cell.lastIndex = at;
    const match = this.addresses.length < most ? cell.exec(text) : null;
    if (match === null) return undefined;
    const [, address, style, type, formula, value] = match;
    if (value !== undefined && value.length > longestValue) this.isWhole = false;
    if (formula !== undefined && formula !== "") {
      const attributes = attributesIn(formula);
      if (attributes === undefined) this.isWhole = false;
      this.markup += attributes?.size ?? 0;
    }
    this.markup += 2 + (style === undefined ? 0 : 1) + (type === undefined ? 0 : 1);
    this.markup += (formula === undefined ? 0 : 1) + (value === undefined ? 0 : 1);
    this.addresses.push(address as string);
    this.types.push(type);
    this.values.push(value === undefined ? undefined : decoded(value));
    this.hasFormula.push(formula !== undefined);
    return cell.lastIndex;
  }
}
