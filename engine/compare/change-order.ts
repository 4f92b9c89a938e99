import { rounded } from "../formula/arithmetic/decimal.js";
import type { Value } from "../formula/value.js";
import { dateInWords } from "../job/date.js";
import { shown } from "../job/shown-value.js";
import type { Cell, Model } from "../template/model.js";
import { type Change, type Comparison, difference } from "./compare.js";
import { belongs, type OfficeChanges, officeChanges } from "./held-back.js";
import { draftOf, type LineChange, lineChanges } from "./page-lines.js";

/** What the office says of a change order besides the two jobs. */
export interface Terms {
  readonly number?: string;
  /** `2027-05-31`. */
  readonly date?: string;
  readonly reason?: string;
  /** The office's own changes (margin, crew, prices) go into the sum too. */
  readonly withOffice?: boolean;
}

/** What a customer reads and signs: the changes in words, and every line of the page agreed to that is another. */
export interface ChangeOrder {
  readonly job: string;
  readonly title: string;
  /** Why it must not be handed out yet, in the words of the page; absent where it may. */
  readonly draft?: string;
  /** Who does the work, as the letterhead names them; empty where no cell says so. */
  readonly contractor: string;
  /** `Customer`, `Site`, number, date, reason: each with what it is; empty where it is to be filled in by hand. */
  readonly head: readonly (readonly [label: string, text: string])[];
  readonly words: readonly string[];
  /** What people call the page agreed to; absent where the template does not say which it is. */
  readonly page?: string;
  readonly lines: readonly LineChange[];
  /** The sum agreed on; absent where the template does not say which cell it is. */
  readonly price?: Change;
  /** Days of work and draws, before and after. */
  readonly terms: readonly Change[];
  /** One sentence on the difference in money. */
  readonly sum: string;
  /** What is said of all that is not listed. */
  readonly rest: string;
  /** The office's own changes that are kept out, for the office alone, and by how much they move the sum. */
  readonly heldBack?: { readonly words: readonly string[]; readonly by: string };
  /** A sentence for the customer where the office's own changes are in the sum. */
  readonly officeShare?: string;
}

/**
 * The customer's side of a comparison. It tells only what the template lets a customer see: never a
 * margin, a rate or a cost of the office. Changes of those are held back, and the sum is what it
 * would be without them, unless the office says that they go in.
 */
export function changeOrderOf(comparison: Comparison, terms: Terms = {}): ChangeOrder {
  const { a, b, inputs, headline } = comparison;
  const { model } = b;
  const { told, agreed } = model.template.roles ?? {};
  const office = officeChanges(comparison);
  const values = office === undefined || terms.withOffice ? b.values : office.without;
  const seen: readonly Change[] =
    told === undefined
      ? headline.filter((one) => !isMoney(model, one) && one.oldShown !== one.newShown)
      : inputs.filter((one) => told.some((name) => belongs(one.id, name)));
  const price = sumChange(comparison, values);
  const lines = agreed === undefined ? [] : lineChanges(a, b, values, agreed);
  const draft = agreed === undefined ? undefined : draftOf(b, values, agreed);
  return {
    job: b.job,
    title: model.template.title,
    ...(draft === undefined ? {} : { draft }),
    contractor: textOf(comparison, agreed?.contractor),
    head: headOf(comparison, terms),
    words: wordsOf(
      seen.map((one) => inWords(b, one)),
      agreed?.name,
      lines,
    ),
    ...(agreed === undefined ? {} : { page: agreed.name }),
    lines,
    ...(price === undefined ? {} : { price }),
    terms: termChanges(comparison, values),
    sum: sumOf(price),
    rest: restOf(agreed?.name, lines),
    ...officePart(comparison, office, terms, lines),
  };
}

/** The text that a cell of the new job holds, where a role names one. */
function textOf({ b }: Comparison, name: string | undefined): string {
  const cell = name === undefined ? undefined : b.model.byId.get(name);
  const value = cell === undefined ? null : b.values[cell.index];
  return typeof value === "string" ? value : "";
}

function headOf(comparison: Comparison, { number, date, reason }: Terms): ChangeOrder["head"] {
  const { roles } = comparison.b.model.template;
  const { agreed } = roles ?? {};
  const text = (name: string | undefined) => textOf(comparison, name);
  return [
    ["Change order no.", number ?? ""],
    ["Date", date === undefined ? "" : dateInWords(date)],
    ...(agreed?.number === undefined
      ? []
      : [[`To ${agreed.name} no.`, text(agreed.number)] as const]),
    ["Customer", text(roles?.customer)],
    ["Site", text(agreed?.site)],
    ["Contractor", text(agreed?.contractor)],
    ["Reason", reason ?? ""],
  ];
}

/** The change of a cell, with the values that the order goes by. */
function changeAt(
  { a, b }: Comparison,
  values: readonly Value[],
  cell: Cell,
  label: string,
): Change {
  const before = a.model.byId.get(cell.id);
  const old = before === undefined ? null : (a.values[before.index] ?? null);
  const now = values[cell.index] ?? null;
  return {
    id: cell.id,
    label,
    unit: cell.declaration.quantity.kind === "number" ? cell.unit.name : "",
    old,
    new: now,
    oldShown: before === undefined ? "none" : shown(a.model, before, old),
    newShown: shown(b.model, cell, now),
  };
}

function sumChange(comparison: Comparison, values: readonly Value[]): Change | undefined {
  const { model } = comparison.b;
  const { roles } = model.template;
  const cell = model.byId.get(roles?.agreed?.sum ?? roles?.price ?? "");
  return cell === undefined
    ? undefined
    : inCents(changeAt(comparison, values, cell, "Contract sum"));
}

/** Days of work, and the draws that either job has. */
function termChanges(comparison: Comparison, values: readonly Value[]): Change[] {
  const { a, b } = comparison;
  const { agreed } = b.model.template.roles ?? {};
  const days = b.model.byId.get(agreed?.days ?? "");
  const found = days === undefined ? [] : [changeAt(comparison, values, days, "Working days")];
  const [table = "", amount = ""] = (agreed?.draws?.amount ?? "").split(".");
  const cells = b.model.tables.get(table)?.columns.get(amount)?.cells ?? [];
  for (const cell of cells) {
    const draw = changeAt(comparison, values, cell, "");
    const filled = [draw.old, draw.new].some((value) => typeof value === "number" && value !== 0);
    if (!filled) continue;
    const name = [b, a].map(({ model, values: of }) => {
      const at = model.byId.get(`${agreed?.draws?.name}[${cell.row}]`);
      return at === undefined ? null : of[at.index];
    });
    const label = name.find((one) => typeof one === "string" && one !== "") ?? cell.row;
    found.push(inCents({ ...draw, label: `Draw: ${label}` }));
  }
  return found;
}

/** Where no change is told in words of its own, what is said must be true of the lines too. */
function wordsOf(
  words: readonly string[],
  page: string | undefined,
  lines: readonly LineChange[],
): readonly string[] {
  if (words.length > 0 || page === undefined || lines.length === 0) return words;
  return [`The lines of the ${page} that are listed below.`];
}

function restOf(page: string | undefined, lines: readonly LineChange[]): string {
  if (page === undefined) {
    return "Only what is listed here was compared. Other things agreed on may have changed too: go through them before you sign.";
  }
  return lines.length === 0
    ? `No line of the ${page} changes.`
    : `Every line of the ${page} that changes is listed here; the others stay as agreed.`;
}

function officePart(
  comparison: Comparison,
  office: OfficeChanges | undefined,
  { withOffice = false }: Terms,
  lines: readonly LineChange[],
): Pick<ChangeOrder, "heldBack" | "officeShare"> {
  if (office === undefined) return {};
  const { a, b } = comparison;
  const [without, whole] = [office.without, b.values].map((values) =>
    sumChange(comparison, values),
  );
  const share = Number(whole?.new) - Number(without?.new);
  const moved = !(Math.abs(share) < 0.005);
  if (withOffice) {
    const said = `Of this, ${signed(share)} comes from the contractor's own figures and not from the changes listed.`;
    return moved ? { officeShare: said } : {};
  }
  const { agreed } = b.model.template.roles ?? {};
  const all = agreed === undefined ? [] : lineChanges(a, b, b.values, agreed);
  const reads = JSON.stringify(all) !== JSON.stringify(lines);
  return moved || reads ? { heldBack: { words: office.words, by: signed(share) } } : {};
}

const signed = (amount: number): string =>
  Number.isFinite(amount)
    ? `${amount < 0 ? "-" : "+"}${dollars(Math.abs(amount))}`
    : "an amount that cannot be told";

/** A share can be a margin, which is nobody's but the office's. */
const isMoney = (model: Model, { id }: Change): boolean => {
  const quantity = model.byId.get(id)?.declaration.quantity;
  return quantity === undefined || quantity.money || quantity.percent;
};

/** `Runs, row 2 (north side): Length 3.00 ft instead of 2.50 ft.` */
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
