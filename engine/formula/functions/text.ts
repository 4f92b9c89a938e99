import { decimalText, rounded } from "../arithmetic/decimal.js";
import { toBoolean, toNumber, toText } from "../arithmetic/operators.js";
import type { Tree } from "../tree.js";
import { plain, type Type, textType, yesnoType } from "../type.js";
import { CellError, type Value } from "../value.js";
import { allValues, countAt, textAt, valueAt } from "./arguments.js";
import { type Check, direct, type Native, type NativeFunction, native } from "./description.js";
import { numberInAnyUnit, takes } from "./rules.js";

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

const longerThanThousand = /\d{4}/;

/** The number rounded to `decimals`, with commas between thousands. */
function fixed(x: number, decimals: number): string {
  if (Math.abs(decimals) > 100) throw new CellError("#VALUE!");
  const [whole, part] = decimalText(rounded(x, decimals), Math.max(decimals, 0)).split(".");
  const grouped = longerThanThousand.test(whole as string)
    ? (whole as string).replace(/\B(?=(\d{3})+$)/g, ",")
    : (whole as string);
  return part === undefined ? grouped : `${grouped}.${part}`;
}

const fixedText = (x: Value, decimals: Value) => fixed(toNumber(x), Math.trunc(toNumber(decimals)));

const textLength = (text: Value = null) =>
  typeof text === "string" ? text.length : toText(text).length;

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

const right: NativeFunction = (args) => {
  const [whole, length] = [textAt(args, 0), lengthAt(args, 1)];
  return whole.slice(Math.max(0, whole.length - length));
};

const middle: NativeFunction = (args) => {
  const start = lengthAt(args, 1, 1) - 1;
  return textAt(args, 0).slice(start, start + lengthAt(args, 2));
};

const trimmed = (text: string) => text.replace(/ +/g, " ").replace(/^ | $/g, "");

/** FIXED rounds halves differently from program to program; ROUND does not. */
const roundedFirst: Check = (args, rules) => {
  const { args: fitted, type } = numberInAnyUnit(textType)(args, rules);
  const [value, decimals] = fitted as [Tree, Tree];
  if (value.kind === "call" && value.name === "ROUND") return { args: [value, decimals], type };
  return { args: [{ kind: "call", name: "ROUND", args: [value, decimals] }, decimals], type };
};

/** A function whose result is a text. */
const making = (
  name: string,
  wanted: readonly Type[],
  run: NativeFunction,
  rest: Partial<Native> = {},
): Native =>
  native(name, [wanted.length], { check: takes(wanted, textType), makesText: true, run, ...rest });

/** Functions of text. Lengths count UTF-16 units. */
export const text = [
  native("TEXTJOIN", [3, 60], {
    check: takes([textType, yesnoType, textType], textType),
    columns: (place) => place >= 2,
    makesText: true,
    prefixed: true,
    run: joined,
  }),
  making("LEFT", [textType, plain], (args) => textAt(args, 0).slice(0, lengthAt(args, 1))),
  making("RIGHT", [textType, plain], right),
  making("MID", [textType, plain, plain], middle),
  native("LEN", [1], {
    check: takes([textType], plain),
    run: (args) => textLength(valueAt(args, 0)),
    code: direct("textLength", textLength),
  }),
  making("UPPER", [textType], (args) => textAt(args, 0).toUpperCase()),
  making("LOWER", [textType], (args) => textAt(args, 0).toLowerCase()),
  making("TRIM", [textType], (args) => trimmed(textAt(args, 0))),
  native("FIXED", [2], {
    check: roundedFirst,
    makesText: true,
    run: (args) => fixedText(valueAt(args, 0), valueAt(args, 1)),
    code: direct("fixedText", fixedText as (...values: Value[]) => Value),
    judge: { takes: ["value", "value"], since: "unknown" },
  }),
  making("CHAR", [plain], (args) => character(countAt(args, 0)), {
    judge: { takes: ["value"], since: "CHAR(150) is a control character" },
  }),
  making("SUBSTITUTE", [textType, textType, textType], substituted, {
    judge: { takes: ["value", "value", "value"], since: 'SUBSTITUTE("aaa", "", "x") = xaxaxax' },
  }),
  making("REPT", [textType, plain], (args) => repeated(textAt(args, 0), lengthAt(args, 1))),
];
