import { FormulaError } from "../formula/formula-error.js";
import { limits } from "../limits.js";
import { decimalsIn } from "../units/decimals.js";
import type { Quantity, UnitSystem } from "../units/quantity.js";
import { unitOf } from "../units/quantity.js";
import { type Reader, spelledUnit } from "../units/spelled.js";

/** A figure named in a sentence: its quantity and decimals. */
export interface Figure {
  readonly quantity: Quantity;
  readonly decimals?: number;
}

/** For whom a sentence is written, and in which units. */
export interface Audience {
  readonly system: UnitSystem;
  readonly reader: Reader;
}

/** What stands behind the name in braces. */
interface NumberStyle {
  readonly decimals?: number;
  readonly bare: boolean;
  readonly towards: "nearest" | "up" | "down";
}

/**
 * Turns a sentence with `{name}`, `{runs.length[2]}` or `{name|decimals}` into a formula that joins
 * text and figures, in the units of the system and spelled for its reader: feet and inches, and words
 * for units, for people outside the office. Further words behind a bar: `bare` (no unit), `up` or
 * `down` (rounded to that side, for what is a least or a most). Texts pass as they are.
 *
 * @param figure looks a name up; undefined for an unknown one, which then stands as a formula of its own
 * @throws FormulaError for an unknown word behind a bar
 */
export function sentenceFormula(
  sentence: string,
  audience: Audience,
  figure: (name: string) => Figure | undefined,
): string {
  const parts: string[] = [];
  for (const piece of sentence.split(/(\{[^}]*\})/)) {
    if (piece === "") continue;
    if (!piece.startsWith("{")) {
      parts.push(textLiteral(piece));
      continue;
    }
    const [name = "", ...asked] = piece.slice(1, -1).split("|");
    const { column, expression } = placeholder(name);
    const found = figure(column);
    if (found === undefined) parts.push(expression);
    else parts.push(spoken(expression, found, audience, styleOf(asked, sentence)));
  }
  return parts.length === 0 ? '""' : parts.join("&");
}

function styleOf(asked: readonly string[], sentence: string): NumberStyle {
  const style: { -readonly [K in keyof NumberStyle]: NumberStyle[K] } = {
    bare: false,
    towards: "nearest",
  };
  for (const word of asked) {
    if (/^\d$/.test(word)) style.decimals = Number(word);
    else if (word === "bare") style.bare = true;
    else if (word === "up" || word === "down") style.towards = word;
    else if (word !== "") {
      const known = "write decimals, bare, up or down";
      throw new FormulaError(sentence, 0, `"${word}" behind a bar is not known: ${known}`);
    }
  }
  return style;
}

/** `runs.length[2]` is the second row of a column. */
function placeholder(name: string): { column: string; expression: string } {
  const match = /^([a-z_0-9]+\.[a-z_0-9]+)\[(\d+)\]$/.exec(name);
  if (match === null) return { column: name, expression: name };
  const [, column = "", row] = match;
  return { column, expression: `INDEX(${column},${row})` };
}

/** A text as a formula holds it; one longer than the format takes is joined from parts. */
export function textLiteral(text: string): string {
  const parts = text.match(withinLimit) ?? [""];
  const literals = parts.map((part) => `"${part.replaceAll('"', '""')}"`);
  return literals.length === 1 ? (literals[0] as string) : `(${literals.join("&")})`;
}

/** Well within what the format takes: some readers count the quotes too, and `&amp;` as five. */
const longestPart = Math.floor(limits.literal * 0.8);
/** Whole characters: a pair of surrogates is not parted. */
const withinLimit = new RegExp(
  `(?:[\\s\\S]{1,${longestPart - 1}}(?![\\udc00-\\udfff])|[\\s\\S]{1,2})`,
  "g",
);

function spoken(
  name: string,
  { quantity, decimals }: Figure,
  { system, reader }: Audience,
  style: NumberStyle,
): string {
  if (quantity.kind === "text") return name;
  if (quantity.kind === "yesno") return `IF(${name},"yes","no")`;
  if (quantity.kind === "date") return dateInWords(name);
  const { bare, towards } = style;
  const unit = unitOf(quantity, system).name;
  const asked = style.decimals ?? decimals;
  const tape = reader === "office" || bare ? undefined : asOnTape(name, unit, asked, towards);
  if (tape !== undefined) return tape;
  const shown = decimalsIn(quantity, system, asked);
  if (quantity.percent) return `FIXED(${name}*100,${shown})&"%"`;
  if (unit === "$" && reader !== "office") return withoutEmptyCents(name, shown);
  const rounded = towardsSide(name, shown, towards);
  const figure = `FIXED(${rounded},${shown})`;
  if (bare || unit === "") return figure;
  if (unit === "$") return `"$"&${figure}`;
  if (unit.startsWith("$/")) return `"$"&${figure}&${textLiteral(` a ${unit.slice(2)}`)}`;
  if (unit === "°") return `${figure}&${textLiteral(unit)}`;
  const { one, many } = spelledUnit(unit, reader);
  if (one === many) return `${figure}&${textLiteral(` ${many}`)}`;
  const isOne = `ROUND(${rounded},${shown})=1[${unit}]`;
  return `${figure}&IF(${isOne},${textLiteral(` ${one}`)},${textLiteral(` ${many}`)})`;
}

/**
 * A length as people measure it: feet and inches, with eighths at two decimals; inches whole or in eighths; millimeters by
 * fives from 50 on, which is about an eighth of an inch, so that 4 in is not set out as 102 mm.
 */
function asOnTape(
  name: string,
  unit: string,
  decimals: number | undefined,
  towards: NumberStyle["towards"],
): string | undefined {
  // two decimals of a foot are an eighth of an inch
  if (unit === "ft" && decimals === 2) {
    return `FEET_AND_EIGHTHS(${towardsSide(`${name}/0.125[in]`, 0, towards, true)})`;
  }
  if (unit === "ft") return `FEET_AND_INCHES(${towardsSide(`${name}/1[in]`, 0, towards, true)})`;
  if (unit === "mm") {
    const [fine, fives] = [1, 5].map((step) =>
      towardsSide(`${name}/${step}[mm]`, 0, towards, true),
    );
    return `MILLIMETERS(${fine},${fives})`;
  }
  if (unit !== "in") return undefined;
  const step = decimals === 0 ? "1[in]" : "0.125[in]";
  const steps = towardsSide(`${name}/${step}`, 0, towards, true);
  return decimals === 0 ? `FIXED(${steps},0)&" in"` : `INCHES_IN_EIGHTHS(${steps})`;
}

/** The number rounded to the side asked for; what is a hair off a step stays on it. */
function towardsSide(
  value: string,
  decimals: number,
  towards: NumberStyle["towards"],
  always = false,
): string {
  if (towards === "nearest") return always ? `ROUND(${value},${decimals})` : value;
  return `ROUND${towards.toUpperCase()}(ROUND(${value},6),${decimals})`;
}

/** Money on paper: no cents where there are none. */
function withoutEmptyCents(name: string, decimals: number): string {
  if (decimals === 0) return `"$"&FIXED(${name},0)`;
  return `"$"&FIXED(${name},IF(ROUND(${name},2)=ROUND(${name},0),0,${decimals}))`;
}

const months = "Jan,Feb,Mar,Apr,May,Jun,Jul,Aug,Sep,Oct,Nov,Dec".split(",").map(textLiteral);

/** `Apr 1, 2027`, built from parts: the formats of TEXT() change with the user's language, and FIXED parts thousands. */
function dateInWords(name: string): string {
  const year = `FIXED(INT(YEAR(${name})/100),0)&RIGHT("0"&FIXED(MOD(YEAR(${name}),100),0),2)`;
  return `CHOOSE(MONTH(${name}),${months.join(",")})&" "&FIXED(DAY(${name}),0)&", "&${year}`;
}
