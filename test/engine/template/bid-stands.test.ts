import { strFromU8, unzipSync } from "fflate";
import { describe, expect, it, test } from "vitest";
import { calculate } from "../../../engine/evaluate/calculate.js";
import type { Value } from "../../../engine/formula/value.js";
import { compile } from "../../../engine/template/compile.js";
import * as t from "../../../engine/template/index.js";
import { xlsxFormula } from "../../../engine/template/printed.js";
import { cellAt } from "../../../engine/workbook/read/lookup.js";
import { readWorkbook } from "../../../engine/workbook/read/read.js";
import { writeWorkbook } from "../../../engine/workbook/write/write.js";
import { faultsOf } from "../../support/tiny.js";
import { toyIdentity } from "../../support/toy.js";

const wide = Object.fromEntries(
  Array.from({ length: 6 }, (_, i) => [`col_${i + 1}`, t.calc(t.number, "share", "")]),
);

/** Two sheets of a calculation with 12 and 3 cells that `part` can break, and a page made from them. */
const template = t.template({
  name: "tiny",
  version: 1,
  title: "Tiny",
  formulas: [],
  headline: ["total"],
  sheets: [
    t.sheet("First sheet", "For a test.", [
      t.lines("Given", {
        part: t.input(t.number, "Part", { default: 1 }),
        other: t.input(t.number, "Other", { default: 1 }),
      }),
      t.table(
        "shares",
        "Shares",
        { rows: 3 },
        { share: t.calc(t.number, (row) => `1/(part+${row}-1)`, "Share"), ...wide },
      ),
    ]),
    t.sheet("Second", "For a test.", [
      t.lines("Sum", {
        total: t.calc(t.number, "SUM(shares.share)", "Total"),
        enough: t.check("total>1", "{total} is too little", { label: "Total too small" }),
      }),
    ]),
    t.sheet(
      "Letter",
      "For a test.",
      [
        t.prose("Letter", {
          draft: t.calc(t.text, 'IF(bid_stands,"Offer","DRAFT")', ""),
          said: t.calc(t.text, 'FIXED(1/other,2)&""', ""),
        }),
      ],
      { page: true },
    ),
  ],
});
const model = compile(template, "us");

function solved(part: Value, other: Value) {
  const given = { part, other };
  const values = calculate(
    model,
    model.cells.map(({ id, fixed }) => given[id as "part"] ?? fixed ?? null),
  );
  const of = (id: string) => values[model.byId.get(id)?.index as number];
  return { values, of };
}

describe("a bid stands", () => {
  it("where no cell is in error and no check fails", () => {
    const { of } = solved(1, 1);
    expect(of("bid_verdict")).toBe("READY: no check fails.");
    expect(of("bid_stands")).toBe(true);
    expect(of("errors_found")).toBe(0);
    expect(of("draft")).toBe("Offer");
  });

  it("not, where a check fails", () => {
    const { of } = solved(10, 1);
    expect(of("bid_verdict")).toBe("NOT READY: 1 check fails. See sheet Checks.");
    expect(of("bid_stands")).toBe(false);
    expect(of("draft")).toBe("DRAFT");
  });

  it("not, where one cell is in error", () => {
    const { of } = solved(0, 1);
    expect([1, 2, 3].map((row) => of(`error_list.told[${row}]`))).toEqual([
      "First sheet",
      "Second",
      "",
    ]);
    expect(of("errors_found")).toBe(2);
    // a check in error has failed
    expect(of("checks_failed")).toBe(1);
    expect(of("bid_verdict")).toBe(
      "NOT READY: cells in error on First sheet, Second; 1 check fails. See sheet Checks.",
    );
    expect(of("draft")).toBe("DRAFT");
  });

  it("not, where a page holds an error", () => {
    const { of } = solved(1, 0);
    expect(of("errors_found")).toBe(0);
    expect(of("errors_on_pages")).toBe(1);
    expect(of("bid_verdict")).toBe("NOT READY: cells in error on Letter. See sheet Checks.");
  });
});

test("errors are found by a formula over each sheet, outside of what finds them", () => {
  const formula = (id: string) => xlsxFormula(model, model.byId.get(id) as never);
  expect(formula("error_list.told[1]")).toMatch(
    /^IF\(ISERROR\(SUM\('First sheet'!\$A\$5:\$G\$13\)\),A\d+,""\)&""$/,
  );
  const [, from, to] = /'Checks'!\$[A-Z]+\$(\d+):\$[A-Z]+\$(\d+)/.exec(
    formula("error_list.told[3]"),
  ) as RegExpExecArray;
  const lineOf = (id: string) => model.byId.get(id)?.line as number;
  expect(Number(from)).toBeGreaterThan(lineOf("warnings"));
  expect(Number(from)).toBeLessThanOrEqual(lineOf("check_shown.check[1]"));
  expect(Number(to)).toBe(lineOf("check_list.rank[2]"));
});

test("the first sheet says so by a live formula, in the color of a failed check", async () => {
  const file = await writeWorkbook(model, solved(0, 1).values, toyIdentity);
  const start = readWorkbook(file).sheets[0];
  const [at, cell] =
    [...(start?.cells ?? [])].find(([, one]) => one.formula === "bid_verdict") ?? [];
  expect(cell?.value).toMatch(/^NOT READY: cells in error/);
  const xml = strFromU8(unzipSync(file)["xl/worksheets/sheet1.xml"] as Uint8Array);
  expect(xml).toContain(`LEFT(${at},9)="NOT READY"`);
  expect(cellAt(readWorkbook(file), "bid_stands").cell.value).toBe(false);
});

test("a sheet of the calculation cannot ask whether the bid stands: it would ask itself", () => {
  const asking = { draft: t.calc(t.text, 'IF(bid_stands,"Offer","DRAFT")', "") };
  const sheets = [...template.sheets, t.sheet("More", "For a test.", [t.prose("", asking)])];
  expect(faultsOf({ ...template, sheets: sheets.filter(({ page }) => !page) }).join()).toMatch(
    /circle: .*error_list\.told\[3\]/,
  );
});

test.each([
  ["FIXED(SUMPRODUCT((cells.second>0)*1),0)", /can stand in ISERROR\(SUM\(\.\.\.\)\) only/],
  ['FIXED(COUNT_WHERE(cells.second,"a"),0)', /takes a whole column/],
  ['IF(ISERROR(cells.second),"a","b")', /can stand in ISERROR\(SUM\(\.\.\.\)\) only/],
  ["FIXED(SUM(cells.second),0)", /takes a number|numbers, not text|should be a/],
  ["FIXED(1+SUM(cells.second),0)", /"\+" takes numbers, not text/],
  ['IF(ISERROR(SUM(cells.third)),"a","b")', /"cells.third" is not known/],
  ['IF(ISERROR(shares.share),"a","b")', /ISERROR takes single values, not a whole column/],
])("refused: %s", (formula, message) => {
  const more = t.prose("", { more: t.calc(t.text, formula, "") });
  const page = { ...t.sheet("More", "For a test.", [more]), asksForErrors: true } as const;
  expect(faultsOf({ ...template, sheets: [...template.sheets, page] }).join("\n")).toMatch(message);
});
