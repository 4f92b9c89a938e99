import type { Tree } from "../tree.js";
import { describeType, plain, type Type } from "../type.js";
import type { Check, Rules, Typed } from "./description.js";

export const alone = (type: Type): Type => ({ ...type, range: false }) as Type;

/** All arguments in the scale of the first that has one; the result has it too. */
export function common(
  args: readonly Typed[],
  rules: Rules,
  what: string,
): { args: Tree[]; type: Type } {
  const first = args.find((arg) => arg.type.kind !== "zero") ?? args[0];
  if (first === undefined) return rules.fail(`${what} has no arguments`);
  return { args: args.map((arg) => rules.fit(arg, first.type, what)), type: alone(first.type) };
}

/** As `common`, of numbers only. */
export const numeric = (args: readonly Typed[], rules: Rules, what: string) => {
  for (const { type } of args) {
    if (type.kind === "text" || type.kind === "yesno") {
      rules.fail(`${what} takes numbers, not ${describeType(type)}`);
    }
  }
  return common(args, rules, what);
};

/** Numbers of one dimension in, the same out. */
export const alike: Check = (args, rules) => numeric(args, rules, "it");

/** Plain numbers in, a plain number out. */
export const plainOnly: Check = (args, rules) => ({
  args: args.map((arg) => rules.fit(arg, plain, "its argument")),
  type: plain,
});

/** The first argument keeps its unit; the rest are plain numbers. */
export const firstKeeps: Check = (args, rules) => {
  const [first, ...rest] = args as [Typed, ...Typed[]];
  numeric([first], rules, "it");
  return {
    args: [first.tree, ...rest.map((arg) => rules.fit(arg, plain, "its further argument"))],
    type: alone(first.type),
  };
};

/** A type for each argument, the last one's for all that follow. */
export const takes =
  (wanted: readonly Type[], result: Type): Check =>
  (args, rules) => ({
    args: args.map((arg, i) => {
      const type = wanted[Math.min(i, wanted.length - 1)] as Type;
      return rules.fit(arg, { ...type, range: arg.type.range }, `argument ${i + 1}`);
    }),
    type: result,
  });

export const anything =
  (result: Type): Check =>
  (args) => ({ args: args.map((arg) => arg.tree), type: result });

export const numberInAnyUnit =
  (result: Type): Check =>
  (args, rules) => ({ args: firstKeeps(args, rules).args, type: result });

// which arguments may be whole columns
export const every = () => true;
export const firstOnly = (place: number) => place === 0;
export const even = (place: number) => place % 2 === 0;
