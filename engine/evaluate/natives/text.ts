import { CellError } from "../../formula/value.js";
import { decimalText, rounded } from "../decimal.js";
import { toBoolean, toText } from "../operators.js";
import { allValues, countAt, type NativeFunction, numberAt, textAt, valueAt } from "./arguments.js";

/** A cell holds no longer text. */
const longest = 32767;

/** The text; throws #VALUE! if a cell cannot hold it. */
function fitting(text: string): string {
  if (text.length > longest) throw new CellError("#VALUE!");
  return text;
}

/** The argument as a number of characters; throws #VALUE! below `lowest`. */
function lengthAt(args: Parameters<NativeFunction>[0], index: number, lowest = 0): number {
  const length = countAt(args, index);
  if (length < lowest) throw new CellError("#VALUE!");
  return length;
}

/** The number rounded to `decimals`, with commas between thousands. */
function fixed(x: number, decimals: number): string {
  if (Math.abs(decimals) > 100) throw new CellError("#VALUE!");
  const [whole, part] = decimalText(rounded(x, decimals), Math.max(decimals, 0)).split(".");
  const grouped = (whole as string).replace(/\B(?=(\d{3})+$)/g, ",");
  return part === undefined ? grouped : `${grouped}.${part}`;
}

/** The character of a code from 1 to 127; above that, programs differ by machine. */
function character(code: number): string {
  if (code < 1 || code > 127) throw new CellError("#VALUE!");
  return String.fromCharCode(code);
}

const repeated = (text: string, times: number) => {
  if (text.length * times > longest) throw new CellError("#VALUE!");
  return text.repeat(times);
};

const joined: NativeFunction = (args) => {
  const texts = allValues(args.slice(2)).map(toText);
  const skipsEmpty = toBoolean(valueAt(args, 1));
  const kept = skipsEmpty ? texts.filter((text) => text !== "") : texts;
  return fitting(kept.join(textAt(args, 0)));
};

const substituted: NativeFunction = (args) => {
  const [text, old, fresh] = [textAt(args, 0), textAt(args, 1), textAt(args, 2)];
  return old === "" ? text : fitting(text.split(old).join(fresh));
};

/** Functions of text. Lengths count UTF-16 units. */
export const text: Readonly<Record<string, NativeFunction>> = {
  TEXTJOIN: joined,
  LEFT: (args) => textAt(args, 0).slice(0, lengthAt(args, 1)),
  RIGHT: (args) => {
    const [whole, length] = [textAt(args, 0), lengthAt(args, 1)];
    return whole.slice(Math.max(0, whole.length - length));
  },
  MID: (args) => {
    const start = lengthAt(args, 1, 1) - 1;
    return textAt(args, 0).slice(start, start + lengthAt(args, 2));
  },
  LEN: (args) => textAt(args, 0).length,
  UPPER: (args) => textAt(args, 0).toUpperCase(),
  LOWER: (args) => textAt(args, 0).toLowerCase(),
  TRIM: (args) => textAt(args, 0).replace(/ +/g, " ").replace(/^ | $/g, ""),
  FIXED: (args) => fixed(numberAt(args, 0), countAt(args, 1)),
  CHAR: (args) => character(countAt(args, 0)),
  SUBSTITUTE: substituted,
  REPT: (args) => repeated(textAt(args, 0), lengthAt(args, 1)),
};
