import { CellError, type Value } from "../formula/value.js";
import type { Cell, Model } from "../template/model.js";
import { rolesOf } from "../template/role-plan.js";
import type { AgainstBuilt } from "./lines.js";

/** What a built job says of its cost: as it was planned, and as it came. */
export interface BuiltFigures {
  readonly planned: number | string;
  readonly made: number | string;
  /** What was kept for what may go wrong. */
  readonly kept: number | string;
  readonly toldWhole: boolean;
  /** What counts as planned, in words. */
  readonly leftOut: string;
}

const parts = ["costPlanned", "costMade", "toldWhole", "leftOut"] as const;

/** The cells that say so, by id; none where the template does not ask what a job took. */
export function builtCells(model: Model): string[] {
  const { built } = model.template.roles ?? {};
  if (built === undefined) return [];
  const { contingency } = rolesOf(model);
  return [
    ...parts.map((part) => built[part]),
    ...(contingency === undefined ? [] : [contingency.id]),
  ];
}

/** Do the inputs of a job say that it is built? */
export function isBuilt(model: Model, given: readonly Value[]): boolean {
  const { built } = model.template.roles ?? {};
  if (built === undefined) return false;
  return given[model.byId.get(built.state)?.index ?? -1] === built.states.built;
}

/** @param valueAt the value of a cell of the calculated job */
export function builtFigures(model: Model, valueAt: (cell: Cell) => Value): BuiltFigures {
  const { built } = model.template.roles ?? {};
  if (built === undefined) throw new RangeError(`${model.template.name} has no role built.`);
  const at = (name: string) => valueAt(model.byId.get(name) as Cell);
  const { contingency } = rolesOf(model);
  return {
    planned: figure(at(built.costPlanned)),
    made: figure(at(built.costMade)),
    kept: contingency === undefined ? 0 : figure(valueAt(contingency)),
    toldWhole: at(built.toldWhole) === true,
    leftOut: String(at(built.leftOut) ?? ""),
  };
}

/**
 * A built job's cost, as bid and as it would be bid now, against what it came to.
 *
 * @param values the job's under the new book, those of `builtCells` among them
 * @param before what the job itself says, by its own book
 */
export function againstBuilt(
  model: Model,
  values: readonly Value[],
  before: BuiltFigures,
): AgainstBuilt {
  const now = builtFigures(model, ({ index }) => values[index] ?? null);
  const { overrun } = rolesOf(model);
  const learned = overrun !== undefined && typeof values[overrun.fifth.index] === "number";
  const covered = learned ? (values[overrun.covered.index] ?? null) : null;
  return {
    bid: before.planned,
    now: now.planned,
    made: before.made,
    kept: before.kept,
    keptNow: now.kept,
    ...(typeof covered === "number" ? { covered } : {}),
    toldWhole: before.toldWhole,
    leftOut: before.leftOut,
  };
}

const figure = (value: Value): number | string =>
  typeof value === "number" ? value : value instanceof CellError ? value.code : "not known";
