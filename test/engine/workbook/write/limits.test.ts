import { describe, expect, it, test } from "vitest";
import { natives } from "../../../../engine/formula/functions/index.js";
import { limits } from "../../../../engine/limits.js";
import { compile } from "../../../../engine/template/compile.js";
import * as t from "../../../../engine/template/index.js";
import { textLiteral } from "../../../../engine/template/sentence.js";
import { writeWorkbook } from "../../../../engine/workbook/write/write.js";
import { beyondLimits } from "../../../support/beyond-limits.js";
import { tinyLines } from "../../../support/tiny.js";
import { toyIdentity } from "../../../support/toy.js";

describe("what is written keeps to the limits of the format", () => {
  it("with words as long as they may be", async () => {
    const model = compile(
      tinyLines({
        far: t.input(t.length, "x".repeat(900), {
          least: 1,
          note: "y".repeat(900),
          optional: true,
        }),
        kind: t.input(t.text, "Kind", {
          choices: ["k".repeat(126), "m".repeat(126)],
          optional: true,
        }),
        used: t.calc(t.text, "~{kind} is {far}", ""),
        long: t.check("plot>0", `${'Long "words" '.repeat(60)}{plot}`, { label: "Long" }),
      }),
      "us",
    );
    const values = model.cells.map(({ declaration }) =>
      declaration.kind === "check" ? false : null,
    );
    const job = "&".repeat(100);
    expect(beyondLimits(await writeWorkbook(model, values, { ...toyIdentity, job }))).toEqual([]);
  });

  it("or is not written: the text of a cell", async () => {
    const model = compile(tinyLines({ said: t.calc(t.text, "title&title", "") }), "us");
    const values = model.cells.map(({ id }) => (id === "said" ? "x".repeat(32_768) : null));
    await expect(writeWorkbook(model, values, toyIdentity)).rejects.toThrow(
      "The text of said (sheet Page) has 32768 characters; a cell holds 32767. Shorten the inputs",
    );
  });
});

test("no function takes more arguments than a formula may have", () => {
  for (const { name, most } of natives.values()) {
    expect(most, name).toBeLessThanOrEqual(limits.arguments);
  }
});

test.each([
  ["", '""'],
  ['say "so"', '"say ""so"""'],
  ["x".repeat(203), `"${"x".repeat(203)}"`],
  ["x".repeat(300), `("${"x".repeat(203)}"&"${"x".repeat(97)}")`],
  [`${"x".repeat(202)}😀${"y".repeat(9)}`, `("${"x".repeat(202)}"&"😀${"y".repeat(9)}")`],
])("a text is parted at the limit, between whole characters", (text, literal) => {
  expect(textLiteral(text)).toBe(literal);
});
