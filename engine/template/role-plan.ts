import { RillbookError } from "../errors.js";
import type { CheckDeclaration } from "./declare.js";
import { messageName } from "./implied-names.js";
import { type Cell, columnOf, type Model } from "./model.js";
import { precedents } from "./order.js";
import type { Overrun } from "./template.js";

interface PlannedCheck {
  readonly name: string;
  readonly level: "must" | "look";
  /** Its cells, row by row. */
  readonly cells: readonly Cell[];
}

/** Where a model holds the figures that its roles name: worked out once for all jobs. */
export interface RolePlan {
  readonly model: Model;
  readonly price: Cell;
  /** The price before it is rounded, where the template has one. */
  readonly exact?: Cell;
  readonly cost: Cell;
  readonly sections: readonly { readonly label: string; readonly cell: Cell }[];
  readonly contingency?: Cell;
  readonly overrun?: { readonly [part in keyof Omit<Overrun, "pace">]: Cell } & Pick<
    Overrun,
    "pace"
  >;
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
  const { price, exact, cost, contingency, overrun, sections, goodUntil } = roles;
  const made: Omit<RolePlan, "targets"> = {
    model,
    price: cellNamed(model, price),
    ...(exact === undefined ? {} : { exact: cellNamed(model, exact) }),
    cost: cellNamed(model, cost),
    sections: sections.map(({ label, name }) => ({ label, cell: cellNamed(model, name) })),
    ...(contingency === undefined ? {} : { contingency: cellNamed(model, contingency) }),
    ...(overrun === undefined ? {} : { overrun: overrunCells(model, overrun) }),
    checks: model.checks.map((name) => plannedCheck(model, name)),
    quotes: goodUntil === undefined ? [] : quotesOf(model, goodUntil),
  };
  const plan = { ...made, targets: targetsOf(model, made) };
  plans.set(model, plan);
  return plan;
}

const overrunCells = (
  model: Model,
  { half, fifth, jobs, source, moves, covered, pace }: Overrun,
) => ({
  pace,
  half: cellNamed(model, half),
  fifth: cellNamed(model, fifth),
  jobs: cellNamed(model, jobs),
  source: cellNamed(model, source),
  moves: cellNamed(model, moves),
  covered: cellNamed(model, covered),
});

const bidStands = "bid_stands";

function targetsOf(model: Model, plan: Omit<RolePlan, "targets">): string[] {
  const { price, cost, overrun, sections, checks } = plan;
  const states = checks.flatMap((check) => check.cells);
  const told = states.flatMap((cell) => toldBy(model, cell));
  const spread = overrun === undefined ? [] : [overrun.moves, overrun.covered];
  const cells = [price, cost, ...spread, ...sections.map(({ cell }) => cell)];
  // whether the bid stands asks for every cell of the calculation
  return [bidStands, ...cells.map(({ id }) => id), ...[...states, ...told].map(({ id }) => id)];
}

/** What the sentence of a check is read from: its message, or the figures that it names. */
function toldBy(model: Model, { name, row = 0, says }: Cell): Cell[] {
  if (says !== undefined) return precedents(model, says, row);
  return [cellNamed(model, row === 0 ? messageName(name) : `${messageName(name)}[${row}]`)];
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
  const cells = key === undefined ? [cellNamed(model, name)] : columnOf(model, table, key).cells;
  const { level } = (cells[0] as Cell).declaration as CheckDeclaration;
  return { name, level, cells };
}

function quotesOf(model: Model, goodUntil: string): RolePlan["quotes"] {
  const [table = "", key = ""] = goodUntil.split(".");
  const codes = columnOf(model, table, "code").cells;
  return columnOf(model, table, key).cells.map(({ index }, i) => ({
    code: codes[i]?.index as number,
    goodUntil: index,
  }));
}
