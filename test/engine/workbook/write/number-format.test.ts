import { expect, test } from "vitest";
import { calc, head, money, number, percent } from "../../../../engine/template/index.js";
import { numberFormat } from "../../../../engine/workbook/write/number-format.js";

test("a zero that stands for no figure is shown in words", () => {
  const format = (declared: ReturnType<typeof calc>) => numberFormat(declared, "us");
  expect(format(calc(head, "1", "Head", { zero: "none" }))).toBe('#,##0.00;-#,##0.00;"none"');
  expect(format(calc(money, "1", "Cost", { zero: "no figure" }))).toBe(
    '[>=1000]"$"#,##0;[=0]"no figure";"$"#,##0.00',
  );
  expect(format(calc(percent, "1", "Share", { zero: "none" }))).toMatch(/%;-.*%;"none"$/);
  expect(format(calc(head, "1", "Head"))).toBe("#,##0.00");
});

test("a figure so large that it stands for no figure is shown in words", () => {
  const beyond = { from: 1000000, says: "shut" };
  expect(numberFormat(calc(number, "1", "K", { beyond }), "us")).toBe('[>=1000000]"shut";#,##0.00');
});
