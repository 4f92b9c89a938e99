import type { Value } from "../formula/value.js";
import { shown } from "../job/shown-value.js";
import type { Cell, Model } from "../template/model.js";
import { moneyOf } from "./moved-price.js";
import type { Recalculation } from "./recalculate.js";
import { placeOf, type Subject, said } from "./subject.js";

/** A headline figure as the workbook shows it, and by the template's formulas from its inputs. */
export interface Headline {
  readonly cell: Cell;
  /** Its cell in the workbook, `Price!B24`; absent where the workbook has lost it. */
  readonly where?: string;
  readonly shown: Value;
  readonly byTemplate: Value;
  /** By the template's formulas with all inputs and prices as they were when the workbook was written, where some were changed. */
  readonly before?: Value;
}

/** The inputs and prices that nobody stands behind: how many, and what tells the prices as they were. */
export interface Changes {
  readonly inputs: number;
  readonly prices: number;
  readonly source: string;
}

/**
 * What the customer pays, the price, what the customer reads on the page agreed to, and all else that the template is told by.
 *
 * @param before all values with inputs and prices as before, where some were changed
 */
export function headlineOf(
  { model, match }: Subject,
  { shown: here, byTemplate }: Recalculation,
  before: readonly Value[] | undefined,
): Headline[] {
  const told = model.template.headline.map((name) => model.byId.get(name));
  const cells = new Set([...moneyOf(model), readOf(model), ...told]);
  return [...cells].flatMap((cell) => {
    if (cell === undefined) return [];
    const { index, id } = cell;
    const place = match.at.get(id);
    return [
      {
        cell,
        ...(place === undefined ? {} : { where: placeOf(place) }),
        shown: here[index] ?? null,
        byTemplate: byTemplate[index] ?? null,
        ...(before === undefined ? {} : { before: before[index] ?? null }),
      },
    ];
  });
}

/** The text on the page agreed to that tells the sum. */
const readOf = ({ template, byId }: Model): Cell | undefined =>
  byId.get(template.roles?.agreed?.sumSaid ?? "");

/** A figure in the words that people read: as it is, by the template, and as it was before the changes. */
interface Said {
  readonly label: string;
  readonly now: string;
  readonly follows: string;
  readonly was: string | undefined;
}

/**
 * The headline figures that are not what the template's formulas give from the same inputs. What the customer pays and the
 * price are told together, also where inputs or prices that nobody stands behind are all that moves them.
 */
export function headlineLines(
  model: Model,
  headline: readonly Headline[],
  changes: Changes,
): string[] {
  const ofMoney = new Set(moneyOf(model));
  const money = headline.filter(({ cell }) => ofMoney.has(cell)).map((one) => saidOf(model, one));
  const read = readOf(model);
  const others = headline.flatMap((one) => {
    if (ofMoney.has(one.cell)) return [];
    const told = saidOf(model, one);
    // a page that was not recalculated since reads as before, which the figures tell
    const differs = told.now !== told.follows && (one.cell !== read || told.now !== told.was);
    return differs ? [{ ...told, was: changes.prices === 0 ? undefined : told.was }] : [];
  });
  return [...moneySaid(money), ...others].map((one) => lineOf(one, changes));
}

function saidOf(model: Model, { cell, where, shown: here, byTemplate, before }: Headline): Said {
  const isRead = cell === readOf(model);
  const words = (value: Value): string =>
    isRead ? said(value) : value === null ? "nothing" : shown(model, cell, value);
  return {
    label: isRead ? `What the customer reads at ${where ?? cell.id}` : cell.declaration.label,
    now: words(here),
    follows: words(byTemplate),
    was: before === undefined ? undefined : words(before),
  };
}

/** Nothing where no figure of money differs or moved; one line where all are the same. */
function moneySaid(money: readonly Said[]): Said[] {
  const moved = ({ now, follows, was }: Said) => now !== follows || was !== undefined;
  if (!money.some(moved)) return [];
  const [first, second] = money;
  if (first === undefined || second === undefined) return [...money];
  const same =
    first.now === second.now && first.follows === second.follows && first.was === second.was;
  return same ? [{ ...first, label: `${second.label}, and ${lowered(first.label)}` }] : [...money];
}

const lowered = (label: string): string => `${label.slice(0, 1).toLowerCase()}${label.slice(1)}`;

function lineOf({ label, now, follows, was }: Said, changes: Changes): string {
  if (was === undefined) {
    const from = changes.inputs > 0 ? ", from the inputs that stand in it now," : "";
    return now === follows
      ? `${label}: ${now}.`
      : `${label}: the workbook shows ${now}; by the template${from} it is ${follows}.`;
  }
  const changed = changedSaid(changes);
  const before = changes.prices === 0 ? "as before" : `as before, as ${changes.source} tells them,`;
  if (now === follows) {
    const same = follows === was ? "the same" : was;
    return `${label}: ${now}; with ${changed} ${before} it would be ${same}.`;
  }
  const made =
    changes.prices === 0
      ? `by the template, from the inputs that stand in it now, it is ${follows}`
      : `with ${changed} it would be ${follows}`;
  const undone = follows === was ? "the same" : was;
  const them =
    changes.prices === 0
      ? changed
      : changes.inputs > 0
        ? "all of them"
        : pricesSaid(changes.prices);
  return `${label}: the workbook shows ${now}; ${made}; with ${them} ${before} it would be ${undone}.`;
}

const pricesSaid = (count: number): string => (count === 1 ? "the price" : "the prices");

function changedSaid({ inputs, prices }: Changes): string {
  const of = (count: number, what: string) =>
    count === 0 ? [] : [count === 1 ? `the changed ${what}` : `the ${count} changed ${what}s`];
  return [...of(inputs, "input"), ...of(prices, "price")].join(" and ");
}
