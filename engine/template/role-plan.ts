import { RillbookError } from "../errors.js";
import type { CheckDeclaration } from "./declare.js";
import { messageName } from "./implied-names.js";
import { type Cell, columnOf, type Model } from "./model.js";

interface PlannedCheck {
  readonly name: string;
  readonly level: "must" | "look";
  /** Indexes of the states, and of the sentences, row by row. */
  readonly states: readonly number[];
  readonly messages: readonly number[];
}

/** Where a model holds the figures that its roles name: worked out once for all jobs. */
export interface RolePlan {
  readonly price: Cell;
  /** The price before it is rounded, where the template has one. */
  readonly exact?: Cell;
  readonly cost: Cell;
  readonly sections: readonly { readonly label: string; readonly cell: Cell }[];
  readonly contingency?: Cell;
  readonly checks: readonly PlannedCheck[];
  readonly quotes: readonly { readonly code: number; readonly goodUntil: number }[];
  /** All cells that the plan looks at, by id. */
  readonly targets: readonly string[];
}

const plans = new WeakMap<Model, RolePlan>();

/** Throws RillbookError for a template that does not say which of its cells are price and cost. */
export function rolesOf(model: Model): RolePlan {
  const known = plans.get(model);
  if (known !== undefined) return known;
  const { template } = model;
  const { roles } = template;
  if (roles === undefined) {
    throw new RillbookError(
      "template-without-roles",
      `Template ${template.name} ${template.version} does not say which of its cells are price and cost, so jobs cannot be compared. Give it "roles".`,
      3,
    );
  }
  const { price, exact, cost, contingency, sections, goodUntil } = roles;
  const made: Omit<RolePlan, "targets"> = {
    price: cellNamed(model, price),
    ...(exact === undefined ? {} : { exact: cellNamed(model, exact) }),
    cost: cellNamed(model, cost),
    sections: sections.map(({ label, name }) => ({ label, cell: cellNamed(model, name) })),
    ...(contingency === undefined ? {} : { contingency: cellNamed(model, contingency) }),
    checks: model.checks.map((name) => plannedCheck(model, name)),
    quotes: goodUntil === undefined ? [] : quotesOf(model, goodUntil),
  };
  const plan = { ...made, targets: targetsOf(model, made) };
  plans.set(model, plan);
  return plan;
}

const bidStands = "bid_stands";

function targetsOf(model: Model, plan: Omit<RolePlan, "targets">): string[] {
  const { price, cost, sections, checks } = plan;
  const indexes = checks.flatMap(({ states, messages }) => [...states, ...messages]);
  const cells = [price, cost, ...sections.map(({ cell }) => cell)];
  // whether the bid stands asks for every cell of the calculation
  return [
    bidStands,
    ...cells.map(({ id }) => id),
    ...indexes.map((index) => (model.cells[index] as Cell).id),
  ];
}

function cellNamed(model: Model, name: string): Cell {
  const cell = model.byId.get(name);
  if (cell !== undefined) return cell;
  throw new RillbookError(
    "template-without-roles",
    `The roles of template ${model.template.name} name "${name}", which is not one of its cells. Correct the template.`,
    3,
  );
}

function plannedCheck(model: Model, name: string): PlannedCheck {
  const [table = "", key] = name.split(".");
  const indexes = (of: string) =>
    key === undefined
      ? [cellNamed(model, of).index]
      : columnOf(model, table, of).cells.map(({ index }) => index);
  const states = indexes(key ?? name);
  const first = model.cells[states[0] as number] as Cell;
  const { level } = first.declaration as CheckDeclaration;
  return { name, level, states, messages: indexes(messageName(key ?? name)) };
}

function quotesOf(model: Model, goodUntil: string): RolePlan["quotes"] {
  const [table = "", key = ""] = goodUntil.split(".");
  const codes = columnOf(model, table, "code").cells;
  return columnOf(model, table, key).cells.map(({ index }, i) => ({
    code: codes[i]?.index as number,
    goodUntil: index,
  }));
}
