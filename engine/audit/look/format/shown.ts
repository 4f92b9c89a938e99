import { numberParts, textPart } from "./code.js";
import { dateSaid, isOfDates } from "./date.js";
import { fractionIn, fractionSaid, numberSaid } from "./number.js";
import { literalsIn, piecesOf } from "./pieces.js";

/** What a number format shows of a value, as a person reads it; in white it shows nothing. */
export function shownBy(code: string, value: number | boolean | string): string {
  if (typeof value === "string") {
    const part = textPart(code);
    if (part === undefined) return value;
    return part.includes(white) ? "" : literalsIn(part, value);
  }
  const { part, signed } = partFor(numberParts(code), Number(value));
  if (part.includes(white)) return "";
  const said = saidBy(part, Math.abs(Number(value)), Number(value));
  return signed ? `-${said}` : said;
}

/** Does a format show a number as a day or a time? */
export const showsDate = (code: string, value: number): boolean =>
  isOfDates(partFor(numberParts(code), value).part);

const white = "[white]";

function saidBy(part: string, size: number, value: number): string {
  if (isOfDates(part)) return dateSaid(part, value);
  const fraction = fractionIn(part);
  return fraction === undefined ? numberSaid(piecesOf(part), size) : fractionSaid(fraction, size);
}

const condition = /\[(<=|>=|<>|<|>|=)\s*(-?[\d.]+(?:e[+-]?\d+)?)\]/i;

/** The part of a format that holds for a number, and whether the number's sign is put before it. */
function partFor(parts: readonly string[], value: number): { part: string; signed: boolean } {
  const asked = parts.map((part) => condition.exec(part));
  const place = parts.findIndex((_, i) => {
    const [, operator, bound] = asked[i] ?? [];
    if (operator !== undefined) return compares(value, operator, Number(bound));
    if (i === 0 && parts.length > 1) return parts.length === 2 ? value >= 0 : value > 0;
    return i !== 1 || parts.length < 3 || value < 0;
  });
  // what no part is for, each program shows as it likes
  if (place < 0) return { part: "general", signed: value < 0 };
  const [, operator, bound] = asked[place] ?? [];
  const ofNegatives =
    operator === undefined
      ? place === 1 && (parts.length === 3 || !asked[0])
      : /^(<=?|=)$/.test(operator) && Number(bound) <= 0;
  return { part: parts[place] as string, signed: value < 0 && !ofNegatives };
}

function compares(value: number, operator: string, bound: number): boolean {
  if (operator === "=") return value === bound;
  if (operator === "<>") return value !== bound;
  if (operator === "<") return value < bound;
  if (operator === "<=") return value <= bound;
  return operator === ">" ? value > bound : value >= bound;
}
