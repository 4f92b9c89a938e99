import { CellError, type Value } from "../value.js";
import { decimalText, significant } from "./decimal.js";

/** What the operators work on: a cell's value that is no error, since errors are thrown. */
export type Plain = Exclude<Value, CellError>;

const numeral = /^\s*[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?\s*$/i;

/** The number itself; throws #NUM! for NaN and infinity, which a cell cannot hold. */
export function finite(value: number): number {
  if (!Number.isFinite(value)) throw new CellError("#NUM!");
  // A cell knows no negative zero.
  return value === 0 ? 0 : value;
}

/** The value, or the error it is, thrown. */
export function plainValue(value: Value): Plain {
  if (value instanceof CellError) throw value;
  return value;
}

/**
 * A value in arithmetic: blank is 0, TRUE is 1, text that reads as a number is that number.
 * Other text, the empty one too, throws #VALUE!. (hyperformula takes "" as 0, and reads dates,
 * per cents and amounts of money out of text: templates do no arithmetic on text.)
 */
export function toNumber(given: Value): number {
  if (typeof given === "number") return given;
  const value = plainValue(given) as Exclude<Plain, number>;
  if (value === null) return 0;
  if (typeof value === "boolean") return value ? 1 : 0;
  if (!numeral.test(value)) throw new CellError("#VALUE!");
  return finite(Number(value));
}

/**
 * A value in text: blank is "", a number has up to 15 significant digits, with an exponent from
 * 1E+21 up and below 1E-9 (from memory). hyperformula writes up to 17 digits: templates write
 * numbers with FIXED.
 */
export function toText(given: Value): string {
  const value = plainValue(given);
  if (value === null) return "";
  if (typeof value === "string") return value;
  if (typeof value === "boolean") return value ? "TRUE" : "FALSE";
  const size = Math.abs(value);
  if (size !== 0 && (size >= 1e21 || size < 1e-9)) {
    const [digits, exponent] = significant(value).toExponential().split("e") as [string, string];
    return `${digits}E${exponent[0]}${exponent.slice(1).padStart(2, "0")}`;
  }
  return decimalText(value);
}

/** A value as a condition: numbers but 0 are TRUE, blank is FALSE; text but TRUE/FALSE throws #VALUE!. */
export function toBoolean(given: Value): boolean {
  const value = plainValue(given);
  if (value === null) return false;
  if (typeof value !== "string") return Boolean(value);
  const upper = value.toUpperCase();
  if (upper !== "TRUE" && upper !== "FALSE") throw new CellError("#VALUE!");
  return upper === "TRUE";
}

const collator = new Intl.Collator("en-US", { sensitivity: "accent" });

/** Lower case of an ASCII letter or digit; 0 for any other character. */
function plainCharacter(code: number): number {
  if (code >= 97 && code <= 122) return code;
  if (code >= 65 && code <= 90) return code + 32;
  return code >= 48 && code <= 57 ? code : 0;
}

/** Of characters below the surrogates, whether the collator gives them any weight: asked of it once. */
const weighed: boolean[] = [];

function weighs(code: number): boolean {
  const known = weighed[code];
  if (known !== undefined) return known;
  const found = collator.compare("", String.fromCharCode(code)) !== 0;
  weighed[code] = found;
  return found;
}

/**
 * Are two texts the same without regard to case, as `compare` has it? Most differ in a plain
 * letter or digit, or one of them is empty, and that is seen without the collator, which is slow.
 */
export function sameText(left: string, right: string): boolean {
  if (left === right) return true;
  const length = Math.min(left.length, right.length);
  for (let i = 0; i < length; i++) {
    const l = left.charCodeAt(i);
    const r = right.charCodeAt(i);
    const a = plainCharacter(l);
    const b = plainCharacter(r);
    if (a !== 0 && b !== 0 && a !== b) return false;
    if ((a === 0 || b === 0) && (l !== r || l > 126)) return collator.compare(left, right) === 0;
  }
  // one is the beginning of the other, but for case
  if (left.length === right.length) return true;
  const next = (left.length > length ? left : right).charCodeAt(length);
  if (next < 0xd800 && weighs(next)) return false;
  return collator.compare(left, right) === 0;
}

const rank = (value: Plain) => (typeof value === "number" ? 0 : typeof value === "string" ? 1 : 2);

/** A blank takes the kind of what it is compared with. */
function likened(value: Plain, other: Plain): Plain {
  if (value !== null) return value;
  if (typeof other === "string") return "";
  return typeof other === "boolean" ? false : 0;
}

/**
 * Below 0, 0 or above 0 as `a` comes before, with or after `b`: numbers before texts before
 * booleans, texts without regard to case. Numbers are compared bit by bit, as hyperformula does
 * without smart rounding; spreadsheet programs take numbers that differ past the 15th digit as equal.
 */
export function compare(a: Value, b: Value): number {
  if (typeof a === "number" && typeof b === "number") return a < b ? -1 : a > b ? 1 : 0;
  const [first, second] = [plainValue(a), plainValue(b)];
  const left = likened(first, second);
  const right = likened(second, first);
  if (typeof left === "string" && typeof right === "string") return collator.compare(left, right);
  if (rank(left) !== rank(right)) return rank(left) - rank(right);
  return Number(left) - Number(right);
}

/**
 * `base` to the power `exponent`. Throws #NUM! where that is no real number, and for 0 to a
 * negative power, as hyperformula does (others: #DIV/0!). 0^0 is 1, as in hyperformula and
 * LibreOffice; other programs refuse it.
 */
export function power(base: number, exponent: number): number {
  return finite(base ** exponent);
}

/** The quotient; throws #DIV/0! for a divisor of 0. */
export function divide(dividend: number, divisor: number): number {
  if (divisor === 0) throw new CellError("#DIV/0!");
  return finite(dividend / divisor);
}
