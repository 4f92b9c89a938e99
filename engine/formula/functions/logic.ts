import { finite, toBoolean, toNumber } from "../arithmetic/operators.js";
import type { Tree } from "../tree.js";
import { plain, type Type, yesnoType } from "../type.js";
import { type Argument, CellError, type Value } from "../value.js";
import { isNumber } from "./aggregates.js";
import { isRange, valueAt } from "./arguments.js";
import { type Check, type Coder, isMany, native, type Typed } from "./description.js";
import { anything, common, every } from "./rules.js";

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

const oneOfMany: Check = (args, rules) => {
  const [at, ...options] = args as [Typed, ...Typed[]];
  const all = common(options, rules, "each option");
  return { args: [rules.fit(at, plain, "the position"), ...all.args], type: all.type };
};

/**
 * Is one of the conditions among the arguments `wanted`? Blanks and, in ranges, texts do not count.
 * All are looked at, since an error in any is an error of the whole.
 */
function someCondition(args: readonly Argument[], wanted: boolean): boolean {
  let counted = false;
  let found = false;
  for (const argument of args) {
    for (const value of isRange(argument) ? argument : [argument]) {
      if (value === null || (typeof value === "string" && isRange(argument))) continue;
      counted = true;
      if (toBoolean(value) === wanted) found = true;
    }
  }
  if (!counted) throw new CellError("#VALUE!");
  return found;
}

/** The same of single values, none of them an error. */
const someOf =
  (wanted: boolean) =>
  (values: readonly Value[]): boolean => {
    let counted = false;
    let found = false;
    for (const value of values) {
      if (value === null) continue;
      counted = true;
      if ((typeof value === "boolean" ? value : toBoolean(value)) === wanted) found = true;
    }
    if (!counted) throw new CellError("#VALUE!");
    return found;
  };

const someFails = someOf(false);
const someHolds = someOf(true);

const conditionsAlone =
  (called: string) =>
  (args: readonly Tree[], { value }: Coder): string | undefined =>
    args.some(isMany) ? undefined : `${called}([${args.map(value).join(",")}])`;

function choose(which: Value, choices: readonly (() => Value)[]): Value {
  const chosen = choices[Math.trunc(toNumber(which)) - 1];
  if (chosen === undefined) throw new CellError("#VALUE!");
  return chosen();
}

const isError = (value: Value): boolean => value instanceof CellError;

function fails(expression: () => Value): boolean {
  try {
    const value = expression();
    if (typeof value === "number") finite(value);
    return false;
  } catch (error) {
    if (error instanceof CellError) return true;
    throw error;
  }
}

function holds(condition: () => boolean): boolean {
  try {
    return condition();
  } catch (error) {
    if (error instanceof CellError) return false;
    throw error;
  }
}

/** Conditions, choices, and questions after the kind of a value. */
export const logic = [
  native("IF", [3], {
    check: choice,
    code: {
      write: ([test, yes, no], { condition, value }) =>
        `(${condition(test)}?${value(yes)}:${value(no)})`,
    },
  }),
  native("AND", [1, 200], {
    check: conditions,
    columns: every,
    run: (args) => !someCondition(args, false),
    code: { write: conditionsAlone("!someFails"), calls: { someFails } },
    judge: {
      takes: ["either"],
      again: 1,
      since: "AND(TRUE, blank) = FALSE; a text in the range = #VALUE!",
    },
  }),
  native("OR", [1, 200], {
    check: conditions,
    columns: every,
    run: (args) => someCondition(args, true),
    code: { write: conditionsAlone("someHolds"), calls: { someHolds } },
    judge: { takes: ["either"], again: 1, since: "as AND" },
  }),
  native("NOT", [1], {
    check: conditions,
    run: (args) => !toBoolean(valueAt(args, 0)),
    code: { write: ([of], { condition }) => (of && isMany(of) ? undefined : `!${condition(of)}`) },
  }),
  native("CHOOSE", [2, 30], {
    check: oneOfMany,
    code: {
      write: ([which, ...choices], { value }) =>
        `choose(${value(which)},[${choices.map((one) => `()=>${value(one)}`).join(",")}])`,
      calls: { choose },
    },
    judge: { takes: ["number", "scalar"], again: 1, since: "CHOOSE(3, 1, 2) = #NUM!" },
  }),
  native("ISERROR", [1], {
    check: anything(yesnoType),
    refused:
      "turns any error into a yes: only the sheet Checks may ask for errors; leave an error an error",
    code: {
      write: ([of], { cell, value }) => {
        const held = cell(of);
        return held === undefined ? `fails(()=>${value(of)})` : `isError(${held})`;
      },
      calls: { isError, fails },
    },
  }),
  native("ISNUMBER", [1], {
    check: anything(yesnoType),
    ofCell:
      "takes a cell, since it says no to an error in a calculation: write LISTED(keys, key) to ask for a key",
    run: (args) => isNumber(valueAt(args, 0)),
    code: {
      write: ([of], { cell, value }) => {
        const held = cell(of);
        return held === undefined
          ? `holds(()=>typeof ${value(of)}==="number")`
          : `(typeof ${held}==="number")`;
      },
      calls: { holds },
    },
  }),
  native("ISBLANK", [1], {
    check: anything(yesnoType),
    ofCell: "takes a cell, since it says no to an error in a calculation",
    code: {
      write: ([of], { cell, value }) => {
        const held = cell(of);
        return held === undefined ? `holds(()=>${value(of)}===null)` : `(${held}===null)`;
      },
      calls: { holds },
    },
  }),
];
