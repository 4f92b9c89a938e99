import { calculate } from "../../engine/evaluate/calculate.js";
import type { NamedFormula } from "../../engine/formula/named-formula.js";
import { compile } from "../../engine/template/compile.js";
import { calc, check, lines, precise, sheet, template } from "../../engine/template/index.js";

/**
 * The value of a formula without names of cells, by both evaluators: a plain number, so divide by
 * the unit it is wanted in, as in `HAZEN_WILLIAMS(20[gal/min],100[ft],2.067[in],150)/1[ft]`.
 */
export function formulaValues(
  formulas: readonly NamedFormula[],
  texts: readonly string[],
  system: "us" | "si" = "us",
): number[] {
  const cells = Object.fromEntries(
    texts.map((text, i) => [`answer_${i + 1}`, calc(precise, text, "Answer")]),
  );
  const model = compile(
    template({
      name: "answers",
      version: 1,
      title: "Answers",
      sheets: [
        sheet("Answers", "Formulas alone.", [
          lines("Answers", {
            ...cells,
            answered: check("ISNUMBER(answer_1)", "No answer: mend the formula.", {
              label: "Answered",
            }),
          }),
        ]),
      ],
      formulas,
      headline: [],
    }),
    system,
  );
  const values = calculate(
    model,
    model.cells.map(() => null),
  );
  return texts.map((_, i) => {
    const value = values[model.byId.get(`answer_${i + 1}`)?.index ?? -1];
    if (typeof value !== "number") throw new Error(`${texts[i]} is ${String(value)}`);
    return value;
  });
}
