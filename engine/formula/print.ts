import { natives } from "./functions/index.js";
import { binding, percentBinding, type Reference, signBinding, type Tree } from "./tree.js";

/** What differs between the programs that read a printed formula. */
export interface PrintStyle {
  /** How a reference is written: an address, a defined name, a number with its unit. */
  readonly reference: (reference: Reference) => string;
  /** How a parameter of a named formula is written. */
  readonly parameter?: (name: string) => string;
  /** Newer functions with the prefix that the file format asks for. */
  readonly prefixed: boolean;
  /** `1E-7` or `1e-7`. */
  readonly exponent: "E" | "e";
  /** Quotes within text doubled, or joined in through CHAR(34). */
  readonly quotes: "doubled" | "joined";
  /** `TRUE()`, for programs that have no word TRUE. */
  readonly calledBooleans?: boolean;
  /** Units behind literal numbers, for people. */
  readonly literalUnits?: boolean;
}

/** Writes a checked tree as a formula, without the leading `=`. */
export function print(tree: Tree, style: PrintStyle): string {
  return write(tree, style, 0);
}

function write(tree: Tree, style: PrintStyle, outer: number): string {
  switch (tree.kind) {
    case "number":
      return number(tree.value, style) + (style.literalUnits && tree.unit ? ` ${tree.unit}` : "");
    case "text":
      return quoted(tree.value, style);
    case "boolean":
      return (tree.value ? "TRUE" : "FALSE") + (style.calledBooleans ? "()" : "");
    case "name":
      return tree.name;
    case "parameter":
      return style.parameter?.(tree.name) ?? tree.name;
    case "negate":
      // as an operand the sign keeps its brackets: (-x)^2 and 0-(-x) are misread without them
      return bracketed(`-${write(tree.of, style, signBinding)}`, outer > 0);
    case "percent":
      return bracketed(`${write(tree.of, style, percentBinding)}%`, outer >= percentBinding);
    case "binary": {
      const own = binding[tree.operator];
      const left = write(tree.left, style, own);
      const right = write(tree.right, style, own + 0.5);
      return bracketed(`${left}${tree.operator}${right}`, own < outer);
    }
    case "convert": {
      const own = binding["*"];
      const { operator, by } = conversion(tree.factor);
      const inner = write(tree.of, style, own);
      return bracketed(`${inner}${operator}${number(by, style)}`, own < outer);
    }
    case "call": {
      const prefix = style.prefixed && natives.get(tree.name)?.prefixed ? "_xlfn." : "";
      return `${prefix}${tree.name}(${tree.args.map((arg) => write(arg, style, 0)).join(",")})`;
    }
    default:
      return style.reference(tree);
  }
}

const bracketed = (inner: string, needed: boolean): string => (needed ? `(${inner})` : inner);

function number(value: number, style: PrintStyle): string {
  if (value < 0) return `(${number(-value, style)})`.replace("(", "(-");
  return String(value).replace("e+", "e").replace("e", style.exponent);
}

function quoted(value: string, style: PrintStyle): string {
  if (style.quotes === "doubled") return `"${value.replaceAll('"', '""')}"`;
  if (!value.includes('"')) return `"${value}"`;
  const pieces = value.split('"').map((piece) => `"${piece}"`);
  return `(${pieces.join("&CHAR(34)&")})`;
}

/**
 * A conversion as people would write it: `/60` rather than `*0.0166666666666667`.
 * The last digits of a ratio of two sizes are rounding; a factor that is short
 * without them is meant to be that.
 */
export function conversion(factor: number): { operator: "*" | "/"; by: number } {
  const by = snapped(factor);
  const inverse = snapped(1 / factor);
  return String(inverse).length < String(by).length
    ? { operator: "/", by: inverse }
    : { operator: "*", by };
}

function snapped(value: number): number {
  const short = Number(value.toPrecision(13));
  return String(short).length <= 12 ? short : Number(value.toPrecision(15));
}
