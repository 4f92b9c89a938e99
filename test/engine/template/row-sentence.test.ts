import { expect, test } from "vitest";
import * as t from "../../../engine/template/index.js";

const one = t.calc(t.number, "1", "");
const falls = t.table("falls", "", { rows: 3 }, { name: one, width: one, at: one });
const said = t.table("said", "", { rows: 3, beside: "falls" }, { width: one, raised: one });
const tables = [falls, said];

test.each([
  ["width>0", "INDEX(falls.width,2)>0"],
  ["NOT( raised )", "NOT( INDEX(said.raised,2) )"],
  [
    'AND(width>total,"width"<>name)',
    'AND(INDEX(falls.width,2)>total,"width"<>INDEX(falls.name,2))',
  ],
  ["SUM(falls.width)+width/1[‹ft|m›]", "SUM(falls.width)+INDEX(falls.width,2)/1[‹ft|m›]"],
  ["WIDTH(at)", "WIDTH(INDEX(falls.at,2))"],
])("a formula in a row: %s", (formula, inRow) => {
  expect(t.formulaInRow(formula, 2, tables)).toBe(inRow);
});

test.each([
  ["{name}: {width|0|up} wide", "{falls.name[3]}: {falls.width[3]|0|up} wide"],
  ["the name of step {row}: {total|1}", "the name of step 3: {total|1}"],
  [
    '{IF(width/1[‹ft|m›]>1,"width "&raised,"")}',
    '{IF(INDEX(falls.width,3)/1[‹ft|m›]>1,"width "&INDEX(said.raised,3),"")}',
  ],
])("a sentence in a row: %s", (sentence, inRow) => {
  expect(t.sentenceInRow(sentence, 3, tables)).toBe(inRow);
});
