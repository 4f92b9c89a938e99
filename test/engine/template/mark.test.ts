import { expect, test } from "vitest";
import { extend } from "../../../engine/template/extend.js";
import {
  calc,
  formula,
  input,
  lines,
  money,
  number,
  sheet,
  type Template,
  template,
} from "../../../engine/template/index.js";
import { templateMark } from "../../../engine/template/mark.js";

/** Invented; each argument is what a case changes. */
const made = (
  cost = "work*2",
  most = 9,
  label = "Work",
  body = "x*2",
  purpose = "Price.",
): Template =>
  template({
    name: "own",
    version: 1,
    title: "Own",
    formulas: [formula("TWICE", "Twice", { x: number }, number, body, "arithmetic")],
    sheets: [
      sheet("Price", purpose, [
        lines("Price", {
          work: input(money, label, { most }),
          cost: calc(money, cost, "Cost"),
        }),
      ]),
    ],
  });

const mark = templateMark(made());

test.each([
  ["a formula", made("work*3")],
  ["a limit", made("work*2", 8)],
  ["the body of a named formula", made("work*2", 9, "Work", "x*2.5")],
  ["a default", extend(made(), { name: "own", version: 1, defaults: { work: 1 } })],
  ["the version", extend(made(), { name: "own", version: 2 })],
])("%s moves the mark", (_, changed) => expect(templateMark(changed)).not.toBe(mark));

test.each([
  ["the same again", made()],
  ["a label", made("work*2", 9, "Labor")],
  ["what a sheet is for", made("work*2", 9, "Work", "x*2", "From cost to price.")],
])("%s does not", (_, same) => expect(templateMark(same)).toBe(mark));
