import { expect, test } from "vitest";
import type { Finding } from "../../../engine/audit/finding.js";
import { byWeight } from "../../../engine/audit/weight.js";
import { pageModel } from "../../support/fence-page.js";
import { inlineText, type Tampered } from "../../support/tamper.js";
import { auditOf, newBook } from "./tampering/run.js";

/** Takes a sheet out as a spreadsheet program does: what stood for its cells stands for nothing. */
function deleteSheet(book: Tampered, name: string): void {
  const order = [...book.text("xl/workbook.xml").matchAll(/<sheet [^>]*?name="([^"]*)"/g)];
  const place = order.findIndex(([, found]) => found === name);
  book.change("xl/workbook.xml", (xml) =>
    xml
      .replace(new RegExp(`<sheet [^>]*?name="${name}"[^>]*/>`), "")
      .replace(
        new RegExp(`<definedName [^>]*localSheetId="${place}"[^>]*>.*?</definedName>`, "g"),
        "",
      )
      .replace(/localSheetId="(\d+)"/g, (whole, at: string) =>
        Number(at) > place ? `localSheetId="${Number(at) - 1}"` : whole,
      )
      .replace(new RegExp(`>'?${name}'?![^<]*</definedName>`, "g"), ">#REF!</definedName>"),
  );
}

const words = (id: string, text: string) => (book: Tampered) =>
  book.cell(id, () => inlineText(text), "inlineStr");

/** The cause of much is told once, and first; the findings that must not be told beside it. */
const cases: readonly {
  readonly what: string;
  readonly edit: (book: Tampered) => unknown;
  readonly first: Partial<Finding>;
  readonly not: readonly Finding["code"][];
}[] = [
  {
    what: "a sheet deleted",
    edit: (book) => deleteSheet(book, "Letter"),
    first: {
      grade: "wrong",
      code: "sheet-missing",
      where: "sheet Letter",
      found: expect.stringMatching(/^the sheet is gone, with its 4 names and 4 formulas/),
      advice: expect.stringContaining("rillbook bid bid.xlsx -o bid-again.xlsx"),
    },
    not: ["name-missing", "value-stale", "formula-edited"],
  },
  {
    what: "a sheet of inputs deleted",
    edit: (book) => deleteSheet(book, "Runs"),
    first: { code: "sheet-missing", advice: expect.stringContaining("from its job record") },
    not: ["name-missing"],
  },
  {
    what: "words typed for a number",
    edit: words("margin", "20 percent"),
    first: {
      grade: "wrong",
      code: "input-kind",
      name: "margin",
      found: expect.stringMatching(/holds "20 percent", but must be a number, not text$/),
      advice: expect.stringMatching(/^Type it again\. \d+ further results follow from this input/),
    },
    not: ["value-stale", "check-failed"],
  },
];

test.each(cases)(
  "told first, and what follows is not told: $what",
  async ({ edit, first, not }) => {
    const book = newBook();
    edit(book);
    const { findings, clean } = await auditOf(book.bytes());
    expect(clean).toBe(false);
    expect(findings[0]).toEqual(expect.objectContaining(first));
    expect(findings.filter(({ code }) => not.includes(code))).toEqual([]);
  },
);

test("a formula that somebody changed is told beside a sheet that is gone", async () => {
  const book = newBook();
  deleteSheet(book, "Letter");
  book.formula("labor", (formula) => formula.replace("75", "7.5"));
  const { findings } = await auditOf(book.bytes());
  expect(findings.map(({ code, name }) => [code, name])).toContainEqual([
    "formula-edited",
    "labor",
  ]);
});

test("a result that was put in is told beside an input at fault that it does not rest on", async () => {
  const book = newBook();
  words("margin", "much")(book);
  book.cell("total_run", (inside) => inside.replace(/<v>.*<\/v>/, "<v>3</v>"));
  const { findings } = await auditOf(book.bytes());
  const stale = findings.filter(({ code }) => code === "value-stale");
  expect(stale.map(({ name }) => name)).toContain("total_run");
});

const weighed = (code: Finding["code"], where: string, more: Partial<Finding> = {}): Finding => ({
  ...{ grade: "wrong", code, where, found: "", expected: "", advice: "" },
  ...more,
});

test("wrong findings: money and people before names and technicalities", () => {
  const told = byWeight(pageModel, [
    weighed("name-missing", "name fence_kind"),
    weighed("value-stale", "Names!C9"),
    weighed("check-failed", "Checks!B3"),
    weighed("sheet-missing", "sheet Crew"),
    weighed("number-format", "Plan!B9"),
    weighed("formula-overwritten", "Letter!A13"),
    weighed("value-stale", "9 cells on 2 sheets: Plan, Offer", { names: ["posts", "price"] }),
    weighed("input-kind", "Plan!B2"),
  ]);
  expect(told.map(({ where }) => where)).toEqual([
    "Plan!B2",
    "Letter!A13",
    "9 cells on 2 sheets: Plan, Offer",
    "Plan!B9",
    "sheet Crew",
    "Checks!B3",
    "name fence_kind",
    "Names!C9",
  ]);
});
