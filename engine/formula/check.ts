import {
  dimensionless,
  divideDimensions,
  multiplyDimensions,
  raiseDimension,
  sameDimension,
} from "../units/dimension.js";
import { counterpart, type UnitSystem } from "../units/quantity.js";
import { unitNamed } from "../units/unit.js";
import { FormulaError } from "./formula-error.js";
import { type Native, natives, type Typed } from "./functions/index.js";
import {
  isOpen,
  type NamedFormula,
  type OpenMeasure,
  outsideType,
  type SettledMeasure,
  isColumn as takesWhole,
} from "./named-formula.js";
import { whyRefused } from "./refused.js";
import { suggestion } from "./suggest.js";
import { frozen, isColumn, type Operator, partsOf, type Tree, walk } from "./tree.js";
import {
  describeType,
  fits,
  type NumberType,
  plain,
  type Type,
  textType,
  typeOfUnit,
  yesnoType,
  zeroType,
} from "./type.js";

/** What the names in a formula stand for. */
export interface Scope {
  readonly system: UnitSystem;
  readonly formulas: ReadonlyMap<string, NamedFormula>;
  /** The node and type behind a name; undefined where there is none. */
  resolve(name: string): Typed | undefined;
  /** All names that could have been meant, for suggestions. */
  names(): Iterable<string>;
}

/**
 * Resolves the names of a parsed formula and checks its functions, arguments and
 * units. Where two scales of one dimension meet, a visible conversion is put in.
 * Throws FormulaError.
 */
export function check(tree: Tree, text: string, scope: Scope): Typed {
  const typed = new Checker(text, scope).typed(tree);
  frozen(typed.tree);
  return typed;
}

/** The checked formula in the scale of `wanted`; throws FormulaError where it does not fit. */
export function fitTo(checked: Typed, wanted: Type, text: string, scope: Scope): Tree {
  return frozen(new Checker(text, scope).fit(checked, wanted, "the result"));
}

const comparisons: readonly Operator[] = ["=", "<>", "<", "<=", ">", ">="];

class Checker {
  constructor(
    private readonly text: string,
    private readonly scope: Scope,
  ) {}

  private fail(reason: string): never {
    throw new FormulaError(this.text, 0, reason);
  }

  typed(tree: Tree): Typed {
    switch (tree.kind) {
      case "number":
        return { tree, type: this.typeOfNumber(tree.value, tree.unit) };
      case "text":
        return { tree, type: textType };
      case "boolean":
        return { tree, type: yesnoType };
      case "name":
        return this.name(tree.name);
      case "negate": {
        const of = this.typed(tree.of);
        this.mustBeNumber(of.type, "the sign");
        // minus TRUE is -1: a number, no longer a yes or no
        const type = of.type.kind === "yesno" ? asNumber(of.type) : of.type;
        return { tree: { ...tree, of: of.tree }, type };
      }
      case "percent": {
        const of = this.typed(tree.of);
        return { tree: { ...tree, of: this.fit(of, plain, "a per cent") }, type: plain };
      }
      case "binary":
        return this.binary(tree.operator, this.typed(tree.left), this.typed(tree.right));
      case "call":
        return this.call(
          tree.name,
          tree.args.map((arg) => this.typed(arg)),
        );
      default:
        return this.fail(`a node of kind "${tree.kind}" cannot be checked twice`);
    }
  }

  /** The tree in the scale of `wanted`, with a conversion where the scales differ. */
  fit(argument: Typed, wanted: Type, what: string): Tree {
    const { tree, type } = argument;
    if (!fits(type, wanted)) {
      this.fail(`${what} should be ${describeType(wanted)} but is ${describeType(type)}`);
    }
    if (type.range && !wanted.range) this.fail(`${what} should be one value but is a whole column`);
    if (type.kind !== "number" || wanted.kind !== "number") return tree;
    return convert(tree, type, wanted);
  }

  private typeOfNumber(value: number, unit: string | undefined): Type {
    if (unit === undefined) return value === 0 ? zeroType : plain;
    try {
      return typeOfUnit(unitNamed(unit));
    } catch (error) {
      return this.fail((error as Error).message);
    }
  }

  private name(name: string): Typed {
    const found = this.scope.resolve(name);
    if (found !== undefined) return found;
    const advice = name.startsWith("above.")
      ? " Only a column with `first`, the formula of its first row, can look at the row above."
      : suggestion(name, this.scope.names());
    return this.fail(`the name "${name}" is not known.${advice}`);
  }

  private mustBeNumber(type: Type, what: string): void {
    if (type.kind === "text") this.fail(`${what} takes numbers, not text`);
  }

  private binary(operator: Operator, left: Typed, right: Typed): Typed {
    for (const { tree } of [left, right]) if (tree.kind === "area") this.onlyForErrors(tree);
    const range = left.type.range || right.type.range;
    const node = (l: Tree, r: Tree): Tree => ({ kind: "binary", operator, left: l, right: r });
    if (operator === "&") {
      const tree = node(this.joined(left), this.joined(right));
      return { tree, type: { ...textType, range } };
    }
    if (comparisons.includes(operator)) {
      const [l, r] = this.alike(left, right, `"${operator}"`);
      return { tree: node(l.tree, r.tree), type: { ...yesnoType, range } };
    }
    if (operator === "+" || operator === "-") {
      for (const { type } of [left, right]) {
        if (type.kind === "text" || type.kind === "yesno") {
          this.fail(`"${operator}" takes numbers, not ${describeType(type)}`);
        }
      }
      const [l, r] = this.alike(left, right, `"${operator}"`);
      const type = { ...(l.type.kind === "zero" ? r.type : l.type), range } as Type;
      return { tree: node(l.tree, r.tree), type };
    }
    this.mustBeNumber(left.type, `"${operator}"`);
    this.mustBeNumber(right.type, `"${operator}"`);
    if (operator === "^") return this.raised(left, right);
    const [a, b] = [asNumber(left.type), asNumber(right.type)];
    const times = operator === "*";
    const dimension = (times ? multiplyDimensions : divideDimensions)(a.dimension, b.dimension);
    const size = times ? a.size * b.size : a.size / b.size;
    const type: NumberType = { kind: "number", dimension, size, range };
    // feet over inches is a plain number at once: INT or FIXED of it would else count twelfths
    if (sameDimension(dimension, dimensionless)) {
      const ratio = { ...plain, range };
      return { tree: convert(node(left.tree, right.tree), type, ratio), type: ratio };
    }
    return { tree: node(left.tree, right.tree), type };
  }

  private joined(part: Typed): Tree {
    if (part.type.kind === "text") return part.tree;
    return this.fail(
      `"&" joins texts, not ${describeType(part.type)}: write numbers with FIXED(value, decimals)`,
    );
  }

  private alike(left: Typed, right: Typed, what: string): [Typed, Typed] {
    if (left.type.kind === "zero") {
      if (!fits(left.type, right.type)) this.clash(left, right, what);
      return [left, right];
    }
    if (!fits(right.type, left.type)) this.clash(left, right, what);
    const tree = this.fit(right, { ...left.type, range: true } as Type, what);
    return [left, { tree, type: right.type }];
  }

  private clash(left: Typed, right: Typed, what: string): never {
    return this.fail(
      `${what} cannot take ${describeType(left.type)} with ${describeType(right.type)}`,
    );
  }

  private raised(base: Typed, exponent: Typed): Typed {
    const right = this.fit(exponent, { ...plain, range: true }, "an exponent");
    const tree: Tree = { kind: "binary", operator: "^", left: base.tree, right };
    const range = base.type.range || exponent.type.range;
    const type = asNumber(base.type);
    if (sameDimension(type.dimension, dimensionless)) {
      // a share held in another scale (h/day) would not survive a power
      if (type.size !== 1) this.fail("a power of a number that is not plain: divide by its unit");
      return { tree, type: { ...plain, range } };
    }
    const power = literal(exponent.tree);
    if (power === undefined) {
      return this.fail(`a power of ${describeType(type)} needs a number as its exponent`);
    }
    const dimension = raiseDimension(type.dimension, power);
    return { tree, type: { kind: "number", dimension, size: type.size ** power, range } };
  }

  private call(name: string, args: Typed[]): Typed {
    const own = this.scope.formulas.get(name);
    if (own !== undefined) return this.ownCall(own, args);
    const native = natives.get(name);
    if (native === undefined) {
      const instead = whyRefused(name);
      if (instead !== undefined) this.fail(`${name} ${instead}`);
      const known = [...natives.keys(), ...this.scope.formulas.keys()];
      return this.fail(
        `the function ${name} is not on the list of allowed functions.${suggestion(name, known)}`,
      );
    }
    if (args.length < native.least || args.length > native.most) {
      const takes =
        native.least === native.most ? `${native.least}` : `${native.least} to ${native.most}`;
      this.fail(`${name} takes ${takes} arguments, not ${args.length}`);
    }
    const checked = native.check(args, {
      fit: (arg, wanted, what) =>
        this.fit(
          arg,
          arg.type.range ? ({ ...wanted, range: true } as Type) : wanted,
          `${what} of ${name}`,
        ),
      fail: (reason) => this.fail(`${name}: ${reason}`),
    });
    for (const arg of checked.args) {
      if (arg.kind === "area" && !native.area) this.onlyForErrors(arg);
    }
    if (!native.rowByRow) {
      checked.args.forEach((arg, place) => {
        this.mustNotSpill(native, arg, place, args[place]?.type.range === true);
      });
    }
    return { tree: { kind: "call", name, args: checked.args }, type: checked.type };
  }

  /** Of the cells of a sheet no figure makes sense together; the sum of them is in error where one is. */
  private onlyForErrors({ sheet }: Extract<Tree, { kind: "area" }>): never {
    this.fail(`all cells of sheet "${sheet}" can stand in ISERROR(SUM(...)) only`);
  }

  /** Only SUMPRODUCT works through columns row by row; elsewhere that needs an array formula. */
  private mustNotSpill({ name, columns }: Native, arg: Tree, place: number, range: boolean): void {
    if (isColumn(arg) || arg.kind === "area") {
      if (columns === undefined) this.fail(`${name} takes single values, not a whole column`);
      if (!columns(place)) this.fail(`argument ${place + 1} of ${name} cannot be a whole column`);
    } else if (range || looseColumn(arg)) {
      this.fail(`${name} cannot calculate with a whole column: use SUMPRODUCT or a further column`);
    }
  }

  private ownCall(own: NamedFormula, args: Typed[]): Typed {
    if (args.length !== own.parameters.length) {
      const wanted = own.parameters.map((parameter) => parameter.name).join(", ");
      this.fail(
        `${own.name} takes ${own.parameters.length} arguments (${wanted}), not ${args.length}`,
      );
    }
    const settled = this.settled(own, args);
    const lifted = this.lifted(own, args);
    const trees = args.map((arg, i) => {
      const { name, measure } = own.parameters[i] as NamedFormula["parameters"][number];
      const wanted = isOpen(measure)
        ? ({ ...settled.get(measure.like), range: measure.column } as Type)
        : outsideType(measure, this.scope.system);
      if (lifted.has(name))
        return this.fit(arg, { ...wanted, range: true } as Type, `"${name}" of ${own.name}`);
      const tree = this.fit(arg, wanted, `"${name}" of ${own.name}`);
      if (wanted.range && !isColumn(tree)) {
        this.fail(`"${name}" of ${own.name} takes a whole column, such as runs.cost`);
      }
      return tree;
    });
    const tree: Tree = { kind: "call", name: own.name, args: trees };
    if (isOpen(own.result)) return { tree, type: settled.get(own.result.like) as Type };
    const range = lifted.size > 0;
    const type = { ...outsideType(own.result as SettledMeasure, this.scope.system), range } as Type;
    if (typeof own.result !== "string" || type.kind !== "number") return { tree, type };
    const usual = { ...typeOfUnit(counterpart(own.result, this.scope.system)), range };
    return { tree: convert(tree, type, usual), type: usual };
  }

  /**
   * The parameters for one value that a call hands whole columns: the formula is then worked out row by
   * row, within SUMPRODUCT. Fails where its body does more with them than arithmetic, which other
   * programs would not go through row by row.
   */
  private lifted(own: NamedFormula, args: readonly Typed[]): ReadonlySet<string> {
    const lifted = new Set(
      own.parameters.flatMap(({ name, measure }, i) => {
        return !takesWhole(measure) && args[i]?.type.range === true ? [name] : [];
      }),
    );
    const within = lifted.size === 0 ? undefined : this.callOn(own.body, lifted);
    if (within !== undefined) {
      const names = [...lifted].map((name) => `"${name}"`).join(" and ");
      this.fail(
        `${names} of ${own.name} should be one value but is a whole column, which its ${within} does not go through row by row`,
      );
    }
    return lifted;
  }

  /** The first function in a body, as written, that would be handed one of these parameters. */
  private callOn(tree: Tree, names: ReadonlySet<string>): string | undefined {
    if (tree.kind !== "call") {
      for (const part of partsOf(tree)) {
        const found = this.callOn(part, names);
        if (found !== undefined) return found;
      }
      return undefined;
    }
    const touched = tree.args.map((arg) =>
      [...walk(arg)].some((node) => node.kind === "name" && names.has(node.name)),
    );
    if (!touched.includes(true)) return undefined;
    const own = this.scope.formulas.get(tree.name);
    if (own === undefined) return tree.name;
    const inner = new Set(own.parameters.filter((_, i) => touched[i]).map(({ name }) => name));
    return (
      tree.args.map((arg) => this.callOn(arg, names)).find((one) => one !== undefined) ??
      this.callOn(own.body, inner)
    );
  }

  /** The types of the open measures of a call: each is that of the column handed over. */
  private settled(own: NamedFormula, args: readonly Typed[]): ReadonlyMap<string, Type> {
    const types = new Map<string, Type>();
    own.parameters.forEach(({ name, measure }, i) => {
      if (!isOpen(measure) || !measure.column || types.has(measure.like)) return;
      const { type } = args[i] as Typed;
      this.mustSuit(measure, type, `"${name}" of ${own.name}`);
      types.set(measure.like, { ...type, range: false } as Type);
    });
    return types;
  }

  private mustSuit(measure: OpenMeasure, type: Type, what: string): void {
    if (!type.range) this.fail(`${what} takes a whole column, such as runs.cost`);
    if (measure.numbers && type.kind !== "number") {
      this.fail(`${what} takes a column of numbers, not of ${describeType(type)}`);
    }
  }
}

function asNumber(type: Type): NumberType {
  return type.kind === "number" ? type : { ...plain, range: type.range };
}

function literal(tree: Tree): number | undefined {
  if (tree.kind === "number") return tree.value;
  if (tree.kind === "negate" && tree.of.kind === "number") return -tree.of.value;
  if (tree.kind === "binary" && tree.operator === "/") {
    const [up, down] = [literal(tree.left), literal(tree.right)];
    return up === undefined || down === undefined ? undefined : up / down;
  }
  return undefined;
}

/** Multiplies by the ratio of two scales, where it is not 1. */
export function convert(tree: Tree, from: NumberType, to: NumberType): Tree {
  const factor = from.size / to.size;
  return Math.abs(factor - 1) < 1e-12 ? tree : { kind: "convert", factor, of: tree };
}

/** A column that is an operand and not an argument of its own. */
export function looseColumn(tree: Tree): boolean {
  if (isColumn(tree) || tree.kind === "area") return true;
  return tree.kind !== "call" && partsOf(tree).some(looseColumn);
}
