import { agree, type OpenedJob } from "../audit/index.js";
import { RillbookError } from "../errors.js";
import { saidBy } from "../evaluate/said-by.js";
import { CellError, type Value } from "../formula/value.js";
import { shown } from "../job/shown-value.js";
import type { Cell, Model } from "../template/model.js";
import { type PriceChange, priceChanges } from "./prices.js";
import { type Reason, reasonsOf } from "./reasons.js";

/** A cell whose value is another in the second job. Values as held, texts as shown with units. */
export interface Change {
  readonly id: string;
  readonly label: string;
  readonly unit: string;
  readonly old: Value;
  readonly new: Value;
  readonly oldShown: string;
  readonly newShown: string;
}

export interface InputChange extends Change {
  /** By whom and why, from the trail of the second job. */
  readonly reason: Reason;
}

/** Two jobs, or two states of one, side by side. */
export interface Comparison {
  readonly a: OpenedJob;
  readonly b: OpenedJob;
  readonly inputs: readonly InputChange[];
  /** Lines of the office book that both or either carry, by code. */
  readonly prices: readonly PriceChange[];
  readonly headline: readonly Change[];
  /** The sections of the price, changed or not; empty where the template names none. */
  readonly sections: readonly Change[];
  readonly price?: Change;
  /** Calculated figures: single cells, then those in rows. */
  readonly figures: readonly Change[];
  readonly checks: readonly {
    readonly id: string;
    readonly now: "fails" | "holds";
    readonly message: string;
  }[];
}

/**
 * What differs between two jobs of one template (versions may differ: names in both are compared).
 * Throws RillbookError for another template or another system of units.
 */
export function compareJobs(a: OpenedJob, b: OpenedJob): Comparison {
  mustCompare(a, b);
  const reasons = reasonsOf(b);
  const changes = b.model.cells.flatMap((cell) => changeOf(a, b, cell));
  const changed = changes.filter(({ old, new: now }) => !agree(old, now));
  const of = (kind: string) => changed.filter(({ id }) => kindOf(b.model, id) === kind);
  const named = (name: string) => changes.find(({ id }) => id === name);
  const { roles, headline } = b.model.template;
  const price = roles === undefined ? undefined : named(roles.price);
  return {
    a,
    b,
    inputs: of("input").map((one) => ({ ...one, reason: reasons(one.id) })),
    prices: priceChanges(a, b),
    headline: headline.flatMap((name) => named(name) ?? []),
    sections: (roles?.sections ?? []).flatMap(({ label, name }) => {
      const found = named(name);
      return found === undefined ? [] : [{ ...found, label }];
    }),
    ...(price === undefined ? {} : { price }),
    figures: of("calc").sort((x, y) => Number(x.id.includes("[")) - Number(y.id.includes("["))),
    checks: of("check").map(({ id, new: now }) => ({
      id,
      now: now === true ? "holds" : "fails",
      message: now === true ? "" : messageOf(b, id),
    })),
  };
}

function mustCompare(a: OpenedJob, b: OpenedJob): void {
  const [one, other] = [a.model, b.model];
  if (one.template.name !== other.template.name) {
    throw new RillbookError(
      "compare-templates",
      `The first is of template ${one.template.name}, the second of ${other.template.name}: only jobs of one template can be compared.`,
    );
  }
  if (one.system !== other.system) {
    throw new RillbookError(
      "compare-units",
      `The first is in ${one.system} units, the second in ${other.system}: bring one of them into the other's units first.`,
    );
  }
}

/** Nothing for a cell that the first job's template lacks, or that the compiler or the checks sheet made. */
function changeOf(a: OpenedJob, b: OpenedJob, cell: Cell): Change[] {
  const before = a.model.byId.get(cell.id);
  const isList = cell.table === "check_list" || cell.table === "check_shown";
  if (before === undefined || cell.implied || isList) return [];
  const [old, now] = [a.values[before.index] ?? null, b.values[cell.index] ?? null];
  return [
    {
      id: cell.id,
      label: cell.declaration.label,
      unit: cell.declaration.quantity.kind === "number" ? cell.unit.name : "",
      old,
      new: now,
      oldShown: shown(a.model, before, old),
      newShown: shown(b.model, cell, now),
    },
  ];
}

const kindOf = (model: Model, id: string): string => model.byId.get(id)?.declaration.kind ?? "";

function messageOf({ model, values }: OpenedJob, id: string): string {
  const cell = model.byId.get(id);
  return cell === undefined ? "" : String(saidBy(model, cell, values) ?? "");
}

/** The difference of two amounts; nothing where either is no number. */
export function difference({ old, new: now }: Change): number | undefined {
  if (old instanceof CellError || now instanceof CellError) return undefined;
  return typeof old === "number" && typeof now === "number" ? now - old : undefined;
}
