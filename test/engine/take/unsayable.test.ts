import { expect, test } from "vitest";
import { unsayable } from "../../../engine/take/inputs.js";
import { compile } from "../../../engine/template/compile.js";
import * as t from "../../../engine/template/index.js";
import { tiny } from "../../support/tiny.js";
import { toyJob } from "../../support/toy.js";

const model = compile(
  tiny([
    t.lines("Given", { height: t.input(t.number, "Height", { default: 5 }) }),
    t.table(
      "extras",
      "Extras",
      { rows: 2, filled: "LEN(what)>0" },
      {
        what: t.input(t.text, "What"),
        needed: t.input(t.number, "Quantity", { default: 0 }),
        unit: t.input(t.text, "Unit", { default: "each" }),
        said: t.calc(t.text, "FIXED(needed*height,0)&unit&what", "In words"),
      },
    ),
  ]),
  "us",
);

const job = { ...toyJob, inputs: { extras: [{ what: "Bench" }, { what: "Lamp" }] } };

test("what a record cannot say of a row is one sentence", () => {
  const wanted = new Map<string, string | number | null>([
    ["height", null],
    ["extras.what[1]", "Bench"],
    ["extras.what[2]", "Lamp"],
    ["extras.needed[2]", 0],
  ]);
  expect(unsayable(model, job, wanted, { tables: {} })).toEqual([
    "height (Height) is blank in the workbook, but where nothing is given the template puts 5. Fill the cell.",
    'extras.needed[1] (Quantity), extras.unit[1] (Unit) are blank in the workbook, but where nothing is given the template puts 0, "each". Fill these cells.',
    'extras.unit[2] (Unit) is blank in the workbook, but where nothing is given the template puts "each". Fill the cell.',
  ]);
});
