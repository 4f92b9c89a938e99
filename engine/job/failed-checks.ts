import { saidBy } from "../evaluate/said-by.js";
import { CellError, type Value } from "../formula/value.js";
import { type Cell, homeOf, type Model } from "../template/model.js";

/** A check that says no, with its sentence. */
export interface FailedCheck {
  readonly cell: Cell;
  /** The sheet on which it is read: that of its table. */
  readonly sheet: string;
  readonly level: "must" | "look";
  readonly message: string;
}

/** The failed checks of an evaluated job, the ones that must hold first, in the order of the sheets. */
export function failedChecks(model: Model, values: readonly Value[]): FailedCheck[] {
  const failed = model.cells.flatMap((cell) => {
    const { declaration } = cell;
    if (declaration.kind !== "check" || values[cell.index] === true) return [];
    const said = saidBy(model, cell, values);
    const message = said instanceof CellError ? untold(said) : String(said);
    return [{ cell, sheet: homeOf(model, cell), level: declaration.level, message }];
  });
  const place = new Map(model.checks.map((name, i) => [name, i]));
  const rank = ({ cell, level }: FailedCheck): number =>
    (level === "look" ? model.checks.length : 0) + (place.get(cell.name) ?? 0);
  return failed.sort((a, b) => rank(a) - rank(b));
}

/** A check that cannot be told has not held. */
const untold = ({ code, origin }: CellError): string =>
  `This cannot be told: ${code}${origin === undefined ? "" : ` in ${origin}`}.`;
