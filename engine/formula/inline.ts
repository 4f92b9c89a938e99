import type { UnitSystem } from "../units/quantity.js";
import { check, fitTo, type Scope } from "./check.js";
import { FormulaError } from "./formula-error.js";
import {
  insideType,
  isOpen,
  type NamedFormula,
  outsideType,
  type SettledMeasure,
} from "./named-formula.js";
import { frozen, mapParts, type Tree } from "./tree.js";

/** Opens named formulas down to native functions, for one system of units. */
export class Inliner {
  private readonly bodies = new Map<string, Tree>();
  private readonly opening: string[] = [];

  constructor(
    private readonly formulas: ReadonlyMap<string, NamedFormula>,
    private readonly system: UnitSystem,
  ) {}

  /** The tree with every named formula replaced by its body. Throws FormulaError, as `body` does. */
  open(tree: Tree): Tree {
    return frozen(this.opened(tree));
  }

  private opened(tree: Tree): Tree {
    const opened = mapParts(tree, (part) => this.opened(part));
    if (opened.kind !== "call") return opened;
    const own = this.formulas.get(opened.name);
    if (own === undefined) return opened;
    const args = new Map(own.parameters.map(({ name }, i) => [name, opened.args[i] as Tree]));
    return substitute(this.body(own), args);
  }

  /** The checked body of a named formula. Throws FormulaError, also where formulas call each other in a circle. */
  body(own: NamedFormula): Tree {
    const known = this.bodies.get(own.name);
    if (known !== undefined) return known;
    if (this.opening.includes(own.name)) {
      const circle = [...this.opening.slice(this.opening.indexOf(own.name)), own.name];
      const reason = `named formulas call each other in a circle: ${circle.join(" -> ")}`;
      throw new FormulaError(own.text, 0, reason);
    }
    this.opening.push(own.name);
    try {
      const tree = this.open(this.checkedBody(own));
      this.bodies.set(own.name, tree);
      return tree;
    } finally {
      this.opening.pop();
    }
  }

  /** The body as written, checked, with the formulas it calls still closed: for showing. */
  checkedBody(own: NamedFormula): Tree {
    const scope: Scope = {
      system: this.system,
      formulas: this.formulas,
      names: () => own.parameters.map((parameter) => parameter.name),
      resolve: (name) => {
        const parameter = own.parameters.find((one) => one.name === name);
        if (parameter === undefined) return undefined;
        const type = insideType(parameter.measure, this.system);
        const column = type.range ? ({ column: true } as const) : {};
        return { tree: { kind: "parameter", name, ...column }, type };
      },
    };
    const checked = check(own.body, own.text, scope);
    const wanted =
      typeof own.result === "string" || isOpen(own.result)
        ? insideType(own.result, this.system)
        : outsideType(own.result as SettledMeasure, this.system);
    return fitTo(checked, wanted, own.text, scope);
  }
}

function substitute(tree: Tree, args: ReadonlyMap<string, Tree>): Tree {
  if (tree.kind === "parameter") return args.get(tree.name) ?? tree;
  return mapParts(tree, (part) => substitute(part, args));
}
