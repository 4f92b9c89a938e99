import { rounded } from "../../evaluate/decimal.js";
import type { Model } from "../../template/model.js";
import { type Change, type Comparison, difference } from "./compare.js";

/** What a customer reads and signs: the changes in words, the price before and after. */
export interface ChangeOrder {
  readonly job: string;
  readonly title: string;
  readonly words: readonly string[];
  /** The price; absent where the template does not say which cell it is. */
  readonly price?: Change;
  /** One sentence on the difference in money. */
  readonly sum: string;
}

/**
 * The customer's side of a comparison. It tells only what the template lets a customer see
 * (`roles.told`): never a margin, a rate or a cost of the office.
 */
export function changeOrderOf({ b, inputs, headline, price }: Comparison): ChangeOrder {
  const { model } = b;
  const { told } = model.template.roles ?? {};
  const seen: readonly Change[] =
    told === undefined
      ? headline.filter((one) => !isMoney(model, one) && one.oldShown !== one.newShown)
      : inputs.filter((one) => told.some((name) => belongs(one.id, name)));
  return {
    job: b.job,
    title: model.template.title,
    words: seen.map((one) => inWords(b, one)),
    ...(price === undefined ? {} : { price: inCents(price) }),
    sum: sumOf(price === undefined ? undefined : inCents(price)),
  };
}

const belongs = (id: string, name: string): boolean =>
  id === name || id.startsWith(`${name}[`) || id.startsWith(`${name}.`);

/** A share can be a margin, which is nobody's but the office's. */
const isMoney = (model: Model, { id }: Change): boolean => {
  const quantity = model.byId.get(id)?.declaration.quantity;
  return quantity === undefined || quantity.money || quantity.percent;
};

/** `Falls, row 2 (upper fall): Width of the lip 3.00 ft instead of 2.50 ft.` */
function inWords({ model, values }: Comparison["b"], change: Change): string {
  const cell = model.byId.get(change.id);
  const table = model.tables.get(cell?.table ?? "");
  const now = change.new === null ? "none" : change.newShown;
  const before = change.old === null ? "none" : change.oldShown;
  const said = `${change.label}: ${now} instead of ${before}.`;
  if (table === undefined || cell?.row === undefined) return said;
  const first = [...table.columns.values()][0]?.cells[cell.row - 1];
  const heading = first === undefined ? null : (values[first.index] ?? null);
  const row = typeof heading === "string" && heading !== "" ? ` (${heading})` : "";
  return `${table.block.heading}, row ${cell.row}${row}: ${said}`;
}

/** The amounts that a customer reads must add up as read. */
const inCents = (price: Change): Change => ({
  ...price,
  old: typeof price.old === "number" ? rounded(price.old, 2) : price.old,
  new: typeof price.new === "number" ? rounded(price.new, 2) : price.new,
});

export const dollars = (amount: number): string =>
  `$${amount.toLocaleString("en-US", { minimumFractionDigits: 2, maximumFractionDigits: 2 })}`;

function sumOf(price: Change | undefined): string {
  const more = price === undefined ? undefined : difference(price);
  if (price === undefined || more === undefined) return "The price cannot be told.";
  const { oldShown, newShown } = price;
  if (Math.abs(more) < 0.005) return `The price stays as it was: ${newShown}.`;
  const amount = dollars(Math.abs(more));
  return more > 0
    ? `The price rises by ${amount}, from ${oldShown} to ${newShown}.`
    : `The price falls by ${amount}, from ${oldShown} to ${newShown}.`;
}
