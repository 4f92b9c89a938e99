import { type ChangeOrder, dollars } from "./change-order.js";
import { type Change, type Comparison, difference } from "./compare.js";
import type { LineChange } from "./page-lines.js";
import { reasonText } from "./reasons.js";

const mostRows = 40;

/** A comparison as Markdown, which reads on a terminal too: first for the office, then for the customer. */
export function comparisonMarkdown(comparison: Comparison, order: ChangeOrder): string {
  const { a, b, inputs, prices, sections, headline, figures, checks } = comparison;
  const single = figures.filter(({ id }) => !id.includes("["));
  const rows = figures.length - single.length;
  const parts = [
    `# Comparison of ${escaped(a.job)} and ${escaped(b.job)}`,
    `Prices: ${escaped(a.book)}; then ${escaped(b.book)}.`,
    section("Inputs", inputs, [
      ["Input", "Was", "Is", "Why"],
      ...inputs.map((one) => [name(one), one.oldShown, one.newShown, reasonText(one.reason)]),
    ]),
    section("Office book", prices, [
      ["Line", "What", "Was", "Is"],
      ...prices.map((one) => [`${one.table} ${one.code}`, one.label, one.oldShown, one.newShown]),
    ]),
    section("Bid summary", headline, [header, ...headline.map(moneyRow)]),
    section("Cost by section", sections, [header, ...sections.map(moneyRow)]),
    section("Quantities and figures", single, [header, ...single.map(moneyRow)]),
    rows === 0 ? "" : `${rows} figures in rows of tables changed too; --json lists them.`,
    section("Checks", checks, [
      ["Check", "Now", "What to do"],
      ...checks.map(({ id, now, message }) => [id, now, message]),
    ]),
    heldBackSaid(order),
    changeOrderMarkdown(order),
  ];
  return `${parts.filter((part) => part !== "").join("\n\n")}\n`;
}

/** What the office is told of its own changes that the change order leaves out; empty where there are none. */
export function heldBackSaid({ heldBack }: ChangeOrder): string {
  if (heldBack === undefined) return "";
  return `Held back from the change order: ${heldBack.words.map(escaped).join("; ")}. They are the office's own and move the sum by ${heldBack.by}; the order goes without them. To put them in, give --office-changes.`;
}

/** The change order alone, for the customer. */
export function changeOrderMarkdown(order: ChangeOrder): string {
  const { job, draft, title, head, words, page, lines, price, terms, sum, rest, officeShare } =
    order;
  const money = [...(price === undefined ? [] : [price]), ...terms];
  return [
    draft === undefined ? "" : `**${escaped(draft)}**`,
    `# Change order, job ${escaped(job)}`,
    escaped(title),
    head.map(([label, text]) => `${label}: ${text === "" ? blank : escaped(text)}  `).join("\n"),
    "## What changes",
    words.length === 0
      ? "Nothing in the work itself changes."
      : words.map((one) => `- ${escaped(one)}`).join("\n"),
    page === undefined ? "" : `## Lines of the ${page} that change`,
    lines.map(lineSaid).join("\n"),
    escaped(rest),
    section("Sum, days and draws", money, [
      ["", "As agreed", "With the change", "Difference"],
      ...money.map((one) => [one.label, ...moneyRow(one).slice(1)]),
    ]),
    `**${escaped(sum)}**`,
    officeShare === undefined ? "" : escaped(officeShare),
    `Customer: ${blank}   Date: ${blank}`,
    `Contractor: ${blank}   Date: ${blank}`,
  ]
    .filter((part) => part !== "")
    .join("\n\n");
}

const blank = "______________________";

function lineSaid({ was, now }: LineChange): string {
  if (was === "") return `- New: ${escaped(now)}`;
  if (now === "") return `- No longer: ${escaped(was)}`;
  return `- Was: ${escaped(was)}\n  Is: ${escaped(now)}`;
}

const header = ["What", "Was", "Is", "Difference"];
const name = ({ label, id }: Change): string => `${label} (${id})`;

function moneyRow(change: Change): string[] {
  const more = difference(change);
  const signed = more === undefined || Math.abs(more) < 1e-9 ? "" : signedAmount(change, more);
  return [name(change), change.oldShown, change.newShown, signed];
}

function signedAmount({ unit, newShown }: Change, more: number): string {
  const sign = more > 0 ? "+" : "-";
  if (unit === "$") return `${sign}${dollars(Math.abs(more))}`;
  if (newShown.endsWith("%")) return `${sign}${Number(Math.abs(more * 100).toPrecision(3))} points`;
  if (unit.startsWith("$")) return `${sign}$${asExact(newShown, Math.abs(more))}${unit.slice(1)}`;
  return `${sign}${asExact(newShown, Math.abs(more))}${unit === "" ? "" : ` ${unit}`}`;
}

/** With the decimals of the figures beside it, or three figures where those would show nothing. */
function asExact(shown: string, more: number): string {
  const decimals = /\.(\d+)/.exec(shown)?.[1]?.length ?? 0;
  const rounded = more.toFixed(decimals);
  return Number(rounded) === 0 ? String(Number(more.toPrecision(3))) : rounded;
}

function section(heading: string, found: readonly unknown[], table: readonly string[][]): string {
  if (found.length === 0) return "";
  const [head = [], ...rows] = table;
  const lines = [head, head.map(() => "---"), ...rows.slice(0, mostRows)];
  const text = lines.map((row) => `| ${row.map(cellText).join(" | ")} |`).join("\n");
  const more =
    rows.length > mostRows ? `\n\n${rows.length - mostRows} more; --json lists them.` : "";
  return `## ${heading}\n\n${text}${more}`;
}

const cellText = (text: string): string => (text === "---" ? text : escaped(text));

/** Text from a job must not become markup, or break a row of a table. */
export const escaped = (text: string): string =>
  text.replace(/[\\`*<>[\]|#~]/g, "\\$&").replace(/[\r\n]+/g, " ");
