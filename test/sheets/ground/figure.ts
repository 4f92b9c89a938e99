import { calculate } from "../../../engine/evaluate/calculate.js";
import { compile } from "../../../engine/template/compile.js";
import {
  calc,
  check,
  lines,
  type Quantity,
  sheet,
  template,
} from "../../../engine/template/index.js";
import { waterfallFormulas } from "../../support/waterfall-sheet.js";

/** The value of one formula in the US unit of a quantity, by both evaluators. */
export function figure(text: string, quantity: Quantity): number {
  const model = compile(
    template({
      name: "figure",
      version: 1,
      title: "",
      sheets: [
        sheet("One", "", [
          // a template must have something to estimate
          lines("One", {
            answer: calc(quantity, text, "Answer"),
            is_number: check("answer > 0", "No figure.", { label: "A figure" }),
          }),
        ]),
      ],
      formulas: waterfallFormulas,
      headline: [],
    }),
    "us",
  );
  const values = calculate(
    model,
    model.cells.map(({ fixed }) => fixed ?? null),
  );
  const found = values[model.byId.get("answer")?.index ?? -1];
  if (typeof found !== "number") throw new Error(`${text} is ${String(found)}, not a number`);
  return found;
}
