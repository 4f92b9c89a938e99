import { join } from "node:path";
import { expect, test } from "vitest";
import { type Audit, auditWorkbook } from "../../../engine/audit/audit.js";
import { auditText } from "../../../engine/audit/report.js";
import { readOfficeBook } from "../../../engine/book/read.js";
import { layoutOf } from "../../../engine/template/office-layout.js";
import { readWorkbook } from "../../../engine/workbook/read/read.js";
import { bidOf, demoFolder } from "../../support/demo.js";
import { inlineText, Tampered } from "../../support/tamper.js";

// What the customer pays moves by a discount, an option, a formula, a price or a text: the head of an audit says by how
// much, whether or not a program recalculated the workbook since.

const bid = await bidOf(join(demoFolder, "hillside-stream.json"));
const office = await readOfficeBook(
  join(demoFolder, "office-book.json"),
  layoutOf(bid.model.template),
);
const number = (value: number) => () => `<v>${value}</v>`;
const stored = (text: string) => (inside: string) => inside.replace(/<v>.*<\/v>/, `<v>${text}</v>`);

/** A formula of the contract price with a discount of its own, and what it comes to. */
const discounted = (book: Tampered) =>
  book.cell("contract_price", (inside) =>
    stored("44450")(inside.replace("-discount</f>", "-discount-5000</f>")),
  );

const known = new Map<unknown, Promise<Audit>>();

/** An audit of the bid with an edit made to it; the same edit is audited once. */
function audited(edit: (book: Tampered) => unknown, book?: typeof office): Promise<Audit> {
  const found = (book === undefined ? known.get(edit) : undefined) ?? auditOf(edit, book);
  if (book === undefined) known.set(edit, found);
  return found;
}

async function auditOf(edit: (book: Tampered) => unknown, book?: typeof office) {
  const changed = new Tampered(bid.bytes, bid.model);
  edit(changed);
  const content = readWorkbook(changed.bytes(), { look: true });
  return auditWorkbook(content, [bid.model.template], { book });
}

/** The lines at the head, above all findings. */
const headOf = (text: string): string[] => (text.split("\n\n")[0] ?? "").split("\n").slice(1);

test.each<[string, (book: Tampered) => unknown, string[]]>([
  [
    "a discount typed in, not recalculated",
    (book) => book.cell("discount", number(5000)),
    [
      "Contract price: the workbook shows $49,400.00; by the template, from the inputs that stand in it now, it is $44,400.00; with the changed input as before it would be $49,400.00.",
      "Price: $49,400.00; with the changed input as before it would be the same.",
    ],
  ],
  [
    "another formula, with what it comes to",
    discounted,
    [
      "Contract price: the workbook shows $44,450.00; by the template it is $49,400.00.",
      "Price: $49,400.00.",
    ],
  ],
  [
    "a number in place of the price, which the customer pays too",
    (book) => book.cell("price", number(45000)),
    [
      "Contract price: $49,400.00.",
      "Price: the workbook shows $45,000.00; by the template it is $49,400.00.",
    ],
  ],
  [
    "a text on the page that is handed out",
    (book) => book.cell("proposal_price", () => inlineText("$44,450 after discount"), "inlineStr"),
    [
      'What the customer reads at Proposal!H99: the workbook shows "$44,450 after discount"; by the template it is "$49,400".',
    ],
  ],
  [
    "a stored result there that is none",
    (book) => book.cell("proposal_price", stored("$44,450")),
    [
      'What the customer reads at Proposal!H99: the workbook shows "$44,450"; by the template it is "$49,400".',
    ],
  ],
  [
    "an input that moves neither",
    (book) => book.cell("customer", () => inlineText("Customer Two"), "inlineStr"),
    [
      "Price, and contract price: $49,400.00; with the changed input as before it would be the same.",
    ],
  ],
])("the head is about what the customer pays: %s", async (_, edit, head) => {
  expect(headOf(auditText(await audited(edit)))).toEqual(head);
});

test("a changed formula says in money what it comes to and what it should", async () => {
  const { findings } = await audited(discounted);
  const one = findings.find(({ code }) => code === "formula-edited");
  expect([one?.found, one?.expected]).toEqual([
    "$44,450.00, by =price+options_taken-discount-5000",
    "$49,400.00, by =price+options_taken-discount",
  ]);
});

test("an option taken: each of its inputs says what it moves of the contract price", async () => {
  const audit = await audited((book) =>
    book
      .cell("options.description[1]", () => inlineText("Night lighting"), "inlineStr")
      .cell("options.other_cost[1]", number(1200))
      .cell("options.taken[1]", number(1), "b"),
  );
  expect(headOf(auditText(audit))[0]).toMatch(
    /^Contract price: .* it is \$51,200\.00; with the 3 changed inputs as before it would be \$49,400\.00\.$/,
  );
  for (const name of ["options.other_cost[1]", "options.taken[1]"]) {
    expect(audit.findings.find((one) => one.name === name)?.found).toMatch(
      /; with the value before it the contract price would be \$49,400\.00, with this one it is \$51,200\.00$/,
    );
  }
});

test.each([
  ["by sheet Trail", undefined, "sheet Trail", ", from the office book as sheet Trail tells it"],
  ["by the office book", office, "the office book", ", as the office book has it"],
])("changed prices are no better than changed inputs: %s", async (_, book, source, expected) => {
  const audit = await audited(
    (changed) => changed.cell("items.cost[1]", number(0.6)).cell("items.cost[6]", number(40)),
    book,
  );
  expect(headOf(auditText(audit))[0]).toBe(
    `Price, and contract price: the workbook shows $49,400.00; with the 2 changed prices it would be $46,400.00; with the prices as before, as ${source} tells them, it would be $49,400.00.`,
  );
  const prices = audit.findings.filter(({ code }) => code === "price-changed");
  expect(prices.map(({ name, found, expected }) => [name, found, expected])).toEqual([
    [
      "items.cost[1]",
      "$0.60; when the workbook was written it was $1.12; with the value before it the price and contract price would be $47,400.00, with this one it is $46,400.00",
      `$1.12${expected}`,
    ],
    [
      "items.cost[6]",
      "$40.00; when the workbook was written it was $62.00; with the value before it the price and contract price would be $48,400.00, with this one it is $46,400.00",
      `$62.00${expected}`,
    ],
  ]);
  for (const { advice } of prices)
    expect(advice).toContain("rillbook bid bid.xlsx -o bid-again.xlsx --office office-book.json");
  const stale = audit.findings.filter(
    ({ code, grade }) => code === "value-stale" && grade === "wrong",
  );
  expect(stale).toHaveLength(1);
  expect(stale[0]?.advice).toMatch(/^First bring the changed prices back/);
  expect(stale[0]?.expected).toMatch(/^\$46,400\.00, .* and the changed prices$/);
});

const pointed = (book: Tampered) =>
  book.change("xl/workbook.xml", (xml) =>
    xml.replace(/(<definedName name="margin_wanted"[^>]*>)[^<]*/, "$1Decisions!$B$204"),
  );

test.each<[string, (book: Tampered) => unknown, string[], RegExp[]]>([
  ["not recalculated since", pointed, [], []],
  [
    "recalculated since",
    (book) => pointed(book).cell("price", stored("40750")).cell("contract_price", stored("40750")),
    ["Price, and contract price: the workbook shows $40,750.00; by the template it is $49,400.00."],
    [/^First point the names back/, /^First point the names back/],
  ],
])(
  "a name pointed at another input's cell is told as that alone: %s",
  async (_, edit, head, stale) => {
    const audit = await audited(edit);
    expect(headOf(auditText(audit))).toEqual(head);
    const [first, ...rest] = audit.findings.filter(({ grade }) => grade !== "to know");
    expect(first).toMatchObject({ code: "name-moved", name: "margin_wanted" });
    expect(first?.found).toContain(
      "the price and contract price would be $40,750.00, with what stands in its own cell it is $49,400.00",
    );
    expect(first?.advice).toContain("margin_wanted should stand for Decisions!B203: point it back");
    expect(rest.map(({ code }) => code)).toEqual(stale.map(() => "value-stale"));
    rest.forEach(({ advice }, i) => {
      expect(advice).toMatch(stale[i] as RegExp);
    });
    expect(audit.findings.filter(({ where }) => /^Decisions!B20[34]$/.test(where))).toEqual([]);
  },
);
