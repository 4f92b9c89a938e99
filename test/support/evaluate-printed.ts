import {
  compare,
  divide,
  power,
  toBoolean,
  toNumber,
  toText,
} from "../../engine/formula/arithmetic/operators.js";
import { natives } from "../../engine/formula/functions/index.js";
import { Inliner } from "../../engine/formula/inline.js";
import type { NamedFormula } from "../../engine/formula/named-formula.js";
import { parse } from "../../engine/formula/parse.js";
import type { Operator, Tree } from "../../engine/formula/tree.js";
import { type Argument, CellError, type Value } from "../../engine/formula/value.js";
import type { Model } from "../../engine/template/model.js";

/**
 * Evaluates a formula as a trace prints it: `2 [ft]+SUM({1;2} [ft])`. Units are passed over, since
 * the text shows every conversion; `bodies` gives the checked bodies of the named formulas.
 */
export function evaluatePrinted(
  text: string,
  bodies: Bodies,
  names: ReadonlyMap<string, Argument> = new Map(),
): Value {
  const known = new Map(names).set("blank", null);
  // dates stand in the brackets of units; error values have no grammar of their own
  const plain = text.replace(
    /\{((?:"(?:[^"]|"")*"|[^"}])*)\}(?: \[[^\]]*\])?/g,
    (_, rows: string) => {
      const name = `column_${known.size}`;
      const parts = rows.match(/"(?:[^"]|"")*"|[^;]+/g) ?? [];
      known.set(
        name,
        parts.map((part) => evaluatePrinted(part, bodies)),
      );
      return name;
    },
  );
  return single(evaluate(parse(plain), { bodies, names: known }));
}

/** A named formula by its name: its parameters and its body with conversions put in. */
export type Bodies = (name: string) => { own: NamedFormula; body: Tree } | undefined;

interface Known {
  readonly bodies: Bodies;
  readonly names: ReadonlyMap<string, Argument>;
}

const single = (argument: Argument): Value =>
  (Array.isArray(argument) ? argument[0] : argument) as Value;

function evaluate(tree: Tree, known: Known): Argument {
  switch (tree.kind) {
    case "number":
    case "text":
    case "boolean":
      return tree.value;
    case "parameter":
    case "name": {
      // of the cells of a sheet a trace shows the name; these jobs have no errors in them
      const value = tree.name.startsWith("cells.") ? [null] : known.names.get(tree.name);
      if (value === undefined) throw new Error(`The text has the name ${tree.name}.`);
      return value;
    }
    case "negate":
      return each([evaluate(tree.of, known)], ([one]) => -toNumber(one as Value));
    case "percent":
      return each([evaluate(tree.of, known)], ([one]) => toNumber(one as Value) / 100);
    case "convert":
      return each([evaluate(tree.of, known)], ([one]) => toNumber(one as Value) * tree.factor);
    case "binary":
      return each([evaluate(tree.left, known), evaluate(tree.right, known)], ([left, right]) =>
        operate(tree.operator, left as Value, right as Value),
      );
    case "call":
      return call(tree.name, tree.args, known);
    default:
      throw new Error(`A ${tree.kind} does not come from the parser.`);
  }
}

/** Row by row where one side is a column. */
function each(sides: readonly Argument[], operation: (values: Value[]) => Value): Argument {
  const rows = sides.find((side) => Array.isArray(side)) as readonly Value[] | undefined;
  if (rows === undefined) return operation(sides as Value[]);
  return rows.map((_, i) =>
    operation(sides.map((side) => (Array.isArray(side) ? side[i] : side) as Value)),
  );
}

function call(name: string, args: readonly Tree[], known: Known): Argument {
  const found = known.bodies(name);
  if (found !== undefined) {
    const names = new Map(
      found.own.parameters.map((parameter, i) => [
        parameter.name,
        evaluate(args[i] as Tree, known),
      ]),
    );
    return evaluate(found.body, { ...known, names });
  }
  const [first, second, third] = args as [Tree, Tree, Tree];
  switch (name) {
    case "IF":
      return evaluate(toBoolean(single(evaluate(first, known))) ? second : third, known);
    case "ISERROR":
      return attempt(
        () => evaluate(first, known) instanceof CellError,
        () => true,
      );
    case "ISNUMBER":
      return attempt(
        () => typeof evaluate(first, known) === "number",
        () => false,
      );
    case "ISBLANK":
      return evaluate(first, known) === null;
    case "CHOOSE":
      return evaluate(args[Math.trunc(toNumber(single(evaluate(first, known))))] as Tree, known);
    default: {
      const run = natives.get(name)?.run;
      if (run === undefined) throw new Error(`No function ${name}.`);
      return run(args.map((arg) => evaluate(arg, known)));
    }
  }
}

function attempt(first: () => Argument, otherwise: () => Argument): Argument {
  try {
    return first();
  } catch (error) {
    if (error instanceof CellError) return otherwise();
    throw error;
  }
}

function operate(operator: Operator, left: Value, right: Value): Value {
  switch (operator) {
    case "+":
      return toNumber(left) + toNumber(right);
    case "-":
      return toNumber(left) - toNumber(right);
    case "*":
      return toNumber(left) * toNumber(right);
    case "/":
      return divide(toNumber(left), toNumber(right));
    case "^":
      return power(toNumber(left), toNumber(right));
    case "&":
      return toText(left) + toText(right);
    default: {
      const order = compare(left, right);
      return {
        "=": order === 0,
        "<>": order !== 0,
        "<": order < 0,
        "<=": order <= 0,
        ">": order > 0,
        ">=": order >= 0,
      }[operator];
    }
  }
}

/** The bodies of a model's named formulas, in its system of units. */
export function bodiesOf(model: Model): Bodies {
  const inliner = new Inliner(model.formulas, model.system);
  return (name) => {
    const own = model.formulas.get(name);
    return own === undefined ? undefined : { own, body: inliner.checkedBody(own) };
  };
}
