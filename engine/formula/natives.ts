import {
  type Dimension,
  dimensionless,
  multiplyDimensions,
  raiseDimension,
} from "../units/dimension.js";
import type { Tree } from "./tree.js";
import { describeType, plain, type Type, textType, yesnoType } from "./type.js";

/** An argument with its type, as the checker hands it to a function's rule. */
export interface Typed {
  readonly tree: Tree;
  readonly type: Type;
}

/** What a rule may ask of the checker. */
export interface Rules {
  /** The argument in the scale of `wanted`; fails where it does not fit. */
  fit(argument: Typed, wanted: Type, what: string): Tree;
  fail(reason: string): never;
}

/** A spreadsheet function that templates may use. */
export interface Native {
  readonly name: string;
  readonly least: number;
  readonly most: number;
  /** Stored with the prefix `_xlfn.` in a file, since it is newer than the first edition of the standard. */
  readonly prefixed: boolean;
  /** Checks the arguments, brings them to a common scale and tells what comes out. */
  readonly check: (args: readonly Typed[], rules: Rules) => { args: Tree[]; type: Type };
}

type Check = Native["check"];

const alone = (type: Type): Type => ({ ...type, range: false }) as Type;

/** All arguments in the scale of the first that has one; the result has it too. */
function common(args: readonly Typed[], rules: Rules, what: string): { args: Tree[]; type: Type } {
  const first = args.find((arg) => arg.type.kind !== "zero") ?? args[0];
  if (first === undefined) return rules.fail(`${what} has no arguments`);
  return { args: args.map((arg) => rules.fit(arg, first.type, what)), type: alone(first.type) };
}

const numeric = (args: readonly Typed[], rules: Rules, what: string) => {
  for (const { type } of args) {
    if (type.kind === "text" || type.kind === "yesno") {
      rules.fail(`${what} takes numbers, not ${describeType(type)}`);
    }
  }
  return common(args, rules, what);
};

/** Numbers of one dimension in, the same out. */
const alike: Check = (args, rules) => numeric(args, rules, "it");

/** The sum of all cells of a sheet is no figure to go on with: it counts as a text. */
const sum: Check = (args, rules) => {
  const [only] = args;
  return args.length === 1 && only?.tree.kind === "area"
    ? { args: [only.tree], type: textType }
    : alike(args, rules);
};

/** Plain numbers in, a plain number out. */
const plainOnly: Check = (args, rules) => ({
  args: args.map((arg) => rules.fit(arg, plain, "its argument")),
  type: plain,
});

/** The first argument keeps its unit; the rest are plain numbers. */
const firstKeeps: Check = (args, rules) => {
  const [first, ...rest] = args as [Typed, ...Typed[]];
  numeric([first], rules, "it");
  return {
    args: [first.tree, ...rest.map((arg) => rules.fit(arg, plain, "its further argument"))],
    type: alone(first.type),
  };
};

/** Rounding up must be guarded, or 110.00000000000001 becomes 111. */
const guarded =
  (then: Check): Check =>
  (args, rules) => {
    const first = args[0]?.tree;
    if (first?.kind !== "call" || first.name !== "ROUND") {
      rules.fail("it rounds up without a guard: write the first argument as ROUND(..., 6)");
    }
    return then(args, rules);
  };

const conditions: Check = (args, rules) => ({
  args: args.map((arg) => rules.fit(arg, { ...yesnoType, range: arg.type.range }, "a condition")),
  type: yesnoType,
});

const choice: Check = (args, rules) => {
  const [condition, ...branches] = args as [Typed, ...Typed[]];
  const both = common(branches, rules, "each branch");
  const type = { ...both.type, range: args.some((arg) => arg.type.range) } as Type;
  const yes = { ...yesnoType, range: condition.type.range };
  return { args: [rules.fit(condition, yes, "the condition"), ...both.args], type };
};

/** Criteria in pairs: a column, then a value it must equal (or a text such as ">0"). */
function pairs(args: readonly Typed[], rules: Rules): Tree[] {
  const trees: Tree[] = [];
  for (let i = 0; i < args.length; i += 2) {
    const [column, wanted] = [args[i], args[i + 1]];
    if (column === undefined || wanted === undefined)
      return rules.fail("its criteria come in pairs");
    if (!column.type.range) rules.fail("a criterion looks through a whole column");
    const comparison = wanted.tree.kind === "text" && /^[<>=]/.test(wanted.tree.value);
    trees.push(
      column.tree,
      comparison ? wanted.tree : rules.fit(wanted, column.type, "a criterion"),
    );
  }
  return trees;
}

const columnThenPairs: Check = (args, rules) => {
  const first = args[0] as Typed;
  return {
    args: [first.tree, ...pairs(args.slice(1), rules)],
    type: alone(numeric([first], rules, "it").type),
  };
};

const matching: Check = (args, rules) => {
  const [wanted, column, exact] = args as [Typed, Typed, Typed];
  if (!column.type.range) rules.fail("it looks through a whole column");
  if (exact.tree.kind !== "number" || exact.tree.value !== 0) {
    rules.fail(
      "its third argument must be 0 (exact): other kinds of match differ between programs",
    );
  }
  return {
    args: [rules.fit(wanted, column.type, "what it looks for"), column.tree, exact.tree],
    type: plain,
  };
};

const index: Check = (args, rules) => {
  const [column, at] = args as [Typed, Typed];
  if (!column.type.range) rules.fail("it picks from a whole column");
  return { args: [column.tree, rules.fit(at, plain, "the position")], type: alone(column.type) };
};

const choose: Check = (args, rules) => {
  const [at, ...options] = args as [Typed, ...Typed[]];
  const all = common(options, rules, "each option");
  return { args: [rules.fit(at, plain, "the position"), ...all.args], type: all.type };
};

const products: Check = (args, rules) => {
  let dimension: Dimension = dimensionless;
  let size = 1;
  for (const { type } of args) {
    if (type.kind === "text" || type.kind === "yesno") {
      rules.fail(`it adds up numbers, not ${describeType(type)}: write (condition)*1`);
    }
    if (type.kind !== "number") continue;
    dimension = multiplyDimensions(dimension, type.dimension);
    size *= type.size;
  }
  return {
    args: args.map((arg) => arg.tree),
    type: { kind: "number", dimension, size, range: false },
  };
};

const root: Check = (args, rules) => {
  const { type, tree } = args[0] as Typed;
  if (type.kind === "zero") return { args: [tree], type };
  if (type.kind !== "number") return rules.fail(`it takes a number, not ${describeType(type)}`);
  return {
    args: [tree],
    type: {
      ...type,
      dimension: raiseDimension(type.dimension, 0.5),
      size: Math.sqrt(type.size),
    },
  };
};

const takes =
  (wanted: readonly Type[], result: Type): Check =>
  (args, rules) => ({
    args: args.map((arg, i) => {
      const type = wanted[Math.min(i, wanted.length - 1)] as Type;
      return rules.fit(arg, { ...type, range: arg.type.range }, `argument ${i + 1}`);
    }),
    type: result,
  });

const anything =
  (result: Type): Check =>
  (args) => ({ args: args.map((arg) => arg.tree), type: result });

const angle: Type = { kind: "number", dimension: { angle: 1 }, size: 1, range: false };
const day: Type = { kind: "number", dimension: { time: 1 }, size: 86400, range: false };

const numberInAnyUnit =
  (result: Type): Check =>
  (args, rules) => {
    const kept = firstKeeps(args, rules);
    return { args: kept.args, type: result };
  };

function native(
  name: string,
  least: number,
  most: number,
  check: Check,
  prefixed = false,
): [string, Native] {
  return [name, Object.freeze({ name, least, most, prefixed, check })];
}

/** The allow-list: each is tested in every evaluator (test/engine/evaluate/, test/office/). */
export const natives: ReadonlyMap<string, Native> = new Map([
  native("ABS", 1, 1, alike),
  native("SUM", 1, 60, sum),
  native("MIN", 1, 60, alike),
  native("MAX", 1, 60, alike),
  native("MOD", 2, 2, alike),
  native("SIGN", 1, 1, numberInAnyUnit(plain)),
  native("INT", 1, 1, alike),
  native("ROUND", 2, 2, firstKeeps),
  native("ROUNDDOWN", 2, 2, firstKeeps),
  native("ROUNDUP", 2, 2, guarded(firstKeeps)),
  native("CEILING", 2, 2, guarded(alike)),
  native("FLOOR", 2, 2, alike),
  native("SQRT", 1, 1, root),
  native("EXP", 1, 1, plainOnly),
  native("LN", 1, 1, plainOnly),
  native("LOG10", 1, 1, plainOnly),
  native("PI", 0, 0, plainOnly),
  native("RADIANS", 1, 1, takes([angle], plain)),
  native("DEGREES", 1, 1, takes([plain], angle)),
  native("SIN", 1, 1, plainOnly),
  native("COS", 1, 1, plainOnly),
  native("TAN", 1, 1, plainOnly),
  native("ATAN", 1, 1, plainOnly),
  native("IF", 3, 3, choice),
  native("AND", 1, 200, conditions),
  native("OR", 1, 200, conditions),
  native("NOT", 1, 1, conditions),
  native("ISERROR", 1, 1, anything(yesnoType)),
  native("ISNUMBER", 1, 1, anything(yesnoType)),
  native("ISBLANK", 1, 1, anything(yesnoType)),
  native("COUNTIF", 2, 2, (args, rules) => ({ args: pairs(args, rules), type: plain })),
  native("COUNTIFS", 2, 20, (args, rules) => ({ args: pairs(args, rules), type: plain })),
  native("MAXIFS", 3, 21, columnThenPairs, true),
  native("MINIFS", 3, 21, columnThenPairs, true),
  native("SUMPRODUCT", 1, 10, products),
  native("SMALL", 2, 2, firstKeeps),
  native("LARGE", 2, 2, firstKeeps),
  native("INDEX", 2, 2, index),
  native("MATCH", 3, 3, matching),
  native("CHOOSE", 2, 30, choose),
  native("FIXED", 2, 2, numberInAnyUnit(textType)),
  native("TEXTJOIN", 3, 60, takes([textType, yesnoType, textType], textType), true),
  native("LEFT", 2, 2, takes([textType, plain], textType)),
  native("RIGHT", 2, 2, takes([textType, plain], textType)),
  native("MID", 3, 3, takes([textType, plain], textType)),
  native("LEN", 1, 1, takes([textType], plain)),
  native("UPPER", 1, 1, takes([textType], textType)),
  native("LOWER", 1, 1, takes([textType], textType)),
  native("TRIM", 1, 1, takes([textType], textType)),
  native("CHAR", 1, 1, takes([plain], textType)),
  native("SUBSTITUTE", 3, 3, takes([textType], textType)),
  native("REPT", 2, 2, takes([textType, plain], textType)),
  native("BINOM.DIST", 4, 4, takes([plain, plain, plain, yesnoType], plain), true),
  native("BINOM.INV", 3, 3, plainOnly, true),
  native("NORM.S.INV", 1, 1, plainOnly, true),
  native("YEAR", 1, 1, takes([day], plain)),
  native("MONTH", 1, 1, takes([day], plain)),
  native("DAY", 1, 1, takes([day], plain)),
  native("DATE", 3, 3, takes([plain], day)),
]);
