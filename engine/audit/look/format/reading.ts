import { short } from "../../subject.js";
import { shownBy, showsDate } from "./shown.js";

/** What a cell shows by another number format than its own, and what its own shows of the same value. */
export interface Reading {
  readonly shows: string;
  readonly holds: string;
}

/**
 * What a cell is read as by a number format, where that is another figure than it holds; undefined where the same
 * figure is read: with other decimals, signs of money, spaces or words beside it.
 *
 * @param here the format that it has
 * @param own the format that it was written with
 */
export function readOtherwise(
  value: number | boolean | string,
  here: string,
  own: string,
): Reading | undefined {
  const [shows, holds] = [shownBy(here, value), shownBy(own, value)];
  if (bare(shows) === bare(holds)) return undefined;
  const otherwise =
    typeof value === "string"
      ? isOtherText(shows, value)
      : typeof value === "boolean" || isAnswer(own)
        ? isOtherAnswer(shows, Number(value))
        : isOtherFigure(value, here, own, { shows, holds });
  return otherwise ? { shows, holds } : undefined;
}

/** `shows $46,900 where the cell holds $49,450`. */
export const misreading = ({ shows, holds }: Reading): string =>
  `shows ${saidOf(shows)} where the cell holds ${saidOf(holds)}`;

const saidOf = (text: string): string => short(text.trim(), 60) || "nothing";

const bare = (text: string): string => text.replace(/\s+/g, "");

/** A text that is not there, or has figures put to it. */
function isOtherText(shows: string, value: string): boolean {
  const at = shows.indexOf(value);
  if (at < 0) return true;
  return /\d/.test(shows.slice(0, at) + shows.slice(at + value.length));
}

const yes = /^(yes|ok|true|-?1)$/i;
const no = /^(no|fails|false|0)$/i;

/** Our formats for yes and no: two words, and no place for a digit. */
const isAnswer = (format: string): boolean => /^"(\w+)";"\1";"\w+"$/.test(format);

/** The contrary answer, a figure, or none. Programs that know yes and no show their own words whatever the format. */
function isOtherAnswer(shows: string, value: number): boolean {
  const said = shows.trim();
  if (said === "" || (value === 0 ? yes : no).test(said)) return true;
  return /\d/.test(said) && !(value === 0 ? no : yes).test(said);
}

function isOtherFigure(
  value: number,
  here: string,
  own: string,
  { shows, holds }: Reading,
): boolean {
  if (showsDate(own, value)) return isOtherDate(shows, holds);
  if (showsDate(here, value)) return true;
  const [is, was] = [figuresIn(shows), figuresIn(holds)];
  // a zero may be shown by a dash, or not at all
  if (is.length === 0) return was.length > 0 && value !== 0;
  const [only, more] = is;
  if (only === undefined || more !== undefined) return true;
  if (only.share && was[0]?.share === false) return true;
  return !isRounded(value, only, was[0]?.step ?? 0);
}

/** A figure as it is read in a text: its value, that of half its last place, and whether it is in per cent. */
interface Figure {
  readonly value: number;
  readonly step: number;
  readonly share: boolean;
}

const figure = /(?:(\d+)\s+)?(\d+)\/(\d+)|(\d[\d,]*)?(?:\.(\d+))?(?<=\d)(?:E([+-]?\d+))?/gi;

function figuresIn(text: string): Figure[] {
  const found = [...text.matchAll(figure)].filter(([said]) => said !== "");
  const enclosed = /\([^()]*\d[^()]*\)/.test(text);
  return found.map((one) => {
    const [said, whole = "0", over, under, digits = "", decimals = "", power = "0"] = one;
    const after = text.slice(one.index + said.length);
    const share = /^\s*%/.test(after);
    const negative =
      enclosed ||
      /[-−–]\s*[^\w\s]?\s*$/.test(text.slice(0, one.index)) ||
      /^\s*[-−]\s*$/.test(after);
    const scale = 10 ** Number(power) / (share ? 100 : 1);
    const size =
      over === undefined
        ? Number(`${digits.replaceAll(",", "")}.${decimals}`) * scale
        : Number(whole) + Number(over) / Number(under);
    const step = over === undefined ? (10 ** -decimals.length / 2) * scale : 0.5 / Number(under);
    return { value: negative ? -size : size, step, share };
  });
}

/** Of what a figure is off by its rounding, as much is nothing that anybody reads otherwise: less where it is to tens or more. */
const leastPart = { byDecimals: 0.05, beyond: 0.005 };

/** Is a figure the value, rounded to places that leave as much as its own format does, or as good as all? */
function isRounded(value: number, { value: said, step }: Figure, ownStep: number): boolean {
  const off = Math.abs(said - value);
  const error = 1e-9 * Math.abs(value);
  const part = step <= 0.5 ? leastPart.byDecimals : leastPart.beyond;
  return (
    off <= step * (1 + 1e-6) + error && off <= Math.max(ownStep, part * Math.abs(value)) + error
  );
}

/** A date with another number or month in it than its own. */
function isOtherDate(shows: string, holds: string): boolean {
  const numbers = (text: string) => text.match(/\d+/g) ?? [];
  const own = new Set(numbers(holds).map(Number));
  const month = monthIn(holds);
  if (month !== undefined) own.add(month);
  const said = monthIn(shows);
  const other = (one: string) => !own.has(Number(one)) && !own.has(2000 + Number(one));
  if (shows.trim() === "") return holds.trim() !== "";
  return (said !== undefined && said !== month) || numbers(shows).some(other);
}

const monthNames = /\b(jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec)/i;

function monthIn(text: string): number | undefined {
  const [, name] = monthNames.exec(text) ?? [];
  if (name === undefined) return undefined;
  return "janfebmaraprmayjunjulaugsepoctnovdec".indexOf(name.toLowerCase()) / 3 + 1;
}
