import { FormulaError } from "../formula/formula-error.js";
import { parse } from "../formula/parse.js";
import { mapParts, type Tree } from "../formula/tree.js";

/** The name behind an area such as `sizes!B12` or `runs!B4:B8` (sheet in lower case), if one stands for it. */
export type NameAt = (area: string) => string | undefined;

const sheetPart = /'((?:[^']|'')+)'!|([\p{L}_][\p{L}\p{N}_.]*)!/uy;
const area =
  /\$?([A-Za-z]{1,3})\$?([1-9]\d{0,6})(?::\$?([A-Za-z]{1,3})\$?([1-9]\d{0,6}))?(?![\w.(])/y;
const word = /[\p{L}\p{N}_.\\]+/uy;
const text = /"(?:[^"]|"")*"/y;

/**
 * The tree of a formula of a workbook as text, in which only what matters for its value is left:
 * letter case, spaces, `$`, brackets that change nothing, the spelling of numbers and of TRUE, the
 * prefix of newer functions, where a text is joined from parts, and whether a cell is meant by name or by address do
 * not count.
 * Undefined for a formula that no template could hold.
 *
 * @param sheet the sheet on which the formula stands
 */
export function normalForm(formula: string, sheet: string, nameAt: NameAt): string | undefined {
  const areas: string[] = [];
  const plain = withPlaceholders(formula, sheet, areas);
  try {
    return JSON.stringify(normal(parse(plain), areas, nameAt));
  } catch (error) {
    if (error instanceof FormulaError || error instanceof RangeError) return undefined;
    throw error;
  }
}

/** A text, a sheet in quotes that its name has no need of, or one that needs them. */
const quotedSheet = /"(?:[^"]|"")*"|'([\p{L}_][\p{L}\p{N}_.]*)'!|'(?:[^']|'')*'/gu;

/**
 * Are two formulas the same but for quotes around sheets that need none? This is most of what programs change by
 * saving, and told without taking the formulas apart.
 */
export const isSpelledAlike = (one: string, other: string): boolean =>
  one === other || (one.includes("!") && barely(one) === barely(other));

const barely = (formula: string): string =>
  formula.replace(quotedSheet, (whole, sheet?: string) =>
    sheet === undefined ? whole : `${sheet}!`,
  );

const placeholder = "area.";

/** Puts a name that the grammar knows in place of each address. */
function withPlaceholders(formula: string, sheet: string, areas: string[]): string {
  let out = "";
  let at = 0;
  const take = (pattern: RegExp): RegExpExecArray | null => {
    pattern.lastIndex = at;
    const match = pattern.exec(formula);
    if (match !== null) at = pattern.lastIndex;
    return match;
  };
  while (at < formula.length) {
    const start = at;
    if (take(text)) {
      out += formula.slice(start, at);
      continue;
    }
    const prefix = take(sheetPart);
    const found = take(area);
    if (found !== null) {
      const home = prefix?.[1]?.replaceAll("''", "'") ?? prefix?.[2] ?? sheet;
      const [, column = "", row, lastColumn, lastRow] = found;
      const from = `${column.toUpperCase()}${row}`;
      const to = lastRow === undefined ? from : `${lastColumn?.toUpperCase()}${lastRow}`;
      // a range of one cell is that cell: programs store it as either
      areas.push(`${home.toLowerCase()}!${to === from ? from : `${from}:${to}`}`);
      out += `${placeholder}${areas.length - 1}`;
      continue;
    }
    // a sheet before anything but an address is kept, and no template has it
    if (prefix === null && !take(word)) at += 1;
    out += formula.slice(start, at);
  }
  return out;
}

/** All that `&` joins, from left to right: brackets among them change nothing. */
function partsJoined(tree: Tree): Tree[] {
  return tree.kind === "binary" && tree.operator === "&"
    ? [...partsJoined(tree.left), ...partsJoined(tree.right)]
    : [tree];
}

/** Texts that follow one another are one text, wherever it was parted. */
function joined(parts: readonly Tree[], inner: (part: Tree) => unknown): unknown {
  const found: unknown[] = [];
  let said: string | undefined;
  for (const part of [...parts, undefined]) {
    if (part?.kind === "text") {
      said = (said ?? "") + part.value;
      continue;
    }
    if (said !== undefined) found.push({ text: said });
    said = undefined;
    if (part !== undefined) found.push(inner(part));
  }
  return found.length === 1 ? found[0] : { joined: found };
}

function normal(tree: Tree, areas: readonly string[], nameAt: NameAt): unknown {
  const inner = (part: Tree) => normal(part, areas, nameAt);
  switch (tree.kind) {
    case "number":
      return Number(tree.value.toPrecision(14));
    case "name": {
      const name = tree.name.toLowerCase();
      if (!name.startsWith(placeholder)) return { name };
      const at = areas[Number(name.slice(placeholder.length))] as string;
      const known = nameAt(at);
      return known === undefined ? { at } : { name: known };
    }
    case "negate":
      return tree.of.kind === "number" ? -tree.of.value : { negate: inner(tree.of) };
    case "percent":
      return { percent: inner(tree.of) };
    case "binary":
      if (tree.operator === "&") return joined(partsJoined(tree), inner);
      return [tree.operator, inner(tree.left), inner(tree.right)];
    case "call": {
      const name = tree.name.replace(/^_XLFN\./, "");
      if (tree.args.length === 0 && (name === "TRUE" || name === "FALSE")) {
        return { is: name === "TRUE" };
      }
      return { call: name, with: tree.args.map(inner) };
    }
    case "boolean":
      return { is: tree.value };
    case "text":
      return { text: tree.value };
    default:
      return mapParts(tree, (part) => part);
  }
}
