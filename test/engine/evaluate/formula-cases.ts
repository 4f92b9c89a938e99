import type { Value } from "../../../engine/formula/value.js";
import { compile } from "../../../engine/template/compile.js";
import * as t from "../../../engine/template/index.js";
import type { Model } from "../../../engine/template/model.js";
import { tiny } from "../../support/tiny.js";

const inputs = {
  n_a: t.input(t.number, ""),
  n_b: t.input(t.number, ""),
  n_zero: t.input(t.number, ""),
  n_blank: t.input(t.number, ""),
  s_a: t.input(t.text, ""),
  s_b: t.input(t.text, ""),
  b_a: t.input(t.yesno, ""),
};
const values: Record<string, Value> = {
  n_a: 3.25,
  n_b: -7,
  n_zero: 0,
  s_a: "Oak tree",
  s_b: "=b",
  b_a: true,
};
const rowValues: Record<string, Value[]> = {
  x: [1, 2.5, null, -3, 0],
  y: [2, null, 4, 1e3, 2],
  name: ["Oak", "elm", null, "ash", "OAK"],
  kind: ["Oak"],
  size: [5],
  wet: [true],
};
const rowsTable = t.table(
  "rows",
  "",
  { rows: 5 },
  {
    x: t.input(t.number, ""),
    y: t.input(t.number, ""),
    name: t.input(t.text, ""),
  },
);
/** A column with an error in its second row. */
const cracked = t.table(
  "cracked",
  "",
  { rows: 5 },
  {
    v: t.calc(t.number, (row) => `n_a/(${row}-2)`, ""),
    w: t.calc(t.number, (row) => `${row}`, ""),
  },
);
/** A table of one row; the columns that are `gone` are blank. */
const single = t.table(
  "single",
  "",
  { rows: 1, data: [{ place: 1 }] },
  {
    place: t.published(t.count, "", { source: "invented" }),
    kind: t.input(t.text, ""),
    kind_gone: t.input(t.text, ""),
    size: t.input(t.length, ""),
    size_gone: t.input(t.length, ""),
    wet: t.input(t.yesno, ""),
    wet_gone: t.input(t.yesno, ""),
    twice: t.calc(t.length, "2*size+size_gone", ""),
  },
);
/** Formulas that use all inputs, so that the template loads. */
const users = {
  n_bad: t.calc(t.number, "1/n_zero", ""),
  n_missing: t.calc(t.number, 'MATCH("none",rows.name,0)', ""),
  use_n: t.calc(t.number, "n_a+n_b+n_blank+SUM(rows.x)+SUM(rows.y)", ""),
  use_s: t.calc(t.text, "s_a&s_b", ""),
  use_b: t.check("b_a", "no", { label: "" }),
  use_kinds: t.calc(t.text, "INDEX(single.kind,1)&INDEX(single.kind_gone,1)", ""),
  use_wet: t.calc(t.yesno, "OR(INDEX(single.wet,1),INDEX(single.wet_gone,1))", ""),
};

/** A template of cells with these formulas, over a few inputs, a table, one of a single row, and a column with an error. */
export function modelOf(cells: Record<string, t.CellDeclaration>): Model {
  const tables = [rowsTable, single, cracked];
  const blocks = [t.lines("", inputs), ...tables, t.lines("", users), t.lines("", cells)];
  const page = { ...t.sheet("Page", "", blocks), asksForErrors: true } as const;
  return compile(tiny([], { sheets: [page] }), "us");
}

/** The values of its inputs. */
export const givenFor = (model: Model): Value[] =>
  model.cells.map(({ name, row, fixed }) => {
    if (fixed !== undefined) return fixed;
    if (row === undefined) return values[name] ?? null;
    return rowValues[name.split(".")[1] ?? ""]?.[row - 1] ?? null;
  });

/** A formula, what it yields, and its value or the error it shows. */
export type FormulaCase = [formula: string, quantity: t.Quantity, value: Value | RegExp];

/** For all programs alike: look-ups keep the errors of what they look at. */
export const lookupCases: readonly FormulaCase[] = [
  ['PICK(rows.y,rows.name,"elm")', t.number, 0],
  ['PICK(rows.y,rows.name,"ASH")', t.number, 1e3],
  ['PICK(rows.y,rows.name,"yew")', t.number, /#N\/A/],
  ['LISTED(rows.name,"*")', t.yesno, false],
  ["PICK(cracked.v,cracked.w,2)", t.number, /#DIV\/0!/],
  ["PICK(cracked.v,cracked.w,3)", t.number, 3.25],
  ["PICK(cracked.w,cracked.w,n_bad)", t.number, /#DIV\/0!/],
  ['PICK_OR(rows.y,rows.name,"yew",7)', t.number, 7],
  ['PICK_OR(rows.y,rows.name,"oak",7)', t.number, 2],
  ['PICK_OR(rows.y,rows.name,"oak",n_bad)', t.number, 2],
  ["PICK_OR(cracked.w,cracked.v,9,7)", t.number, /#DIV\/0!/],
  ["PICK_OR(cracked.w,cracked.w,n_missing,7)", t.number, /#N\/A/],
  ["PICK_OR(cracked.v,cracked.w,2,7)", t.number, /#DIV\/0!/],
  ["PLACE_OR_ZERO(cracked.w,4)", t.number, 4],
  ["PLACE_OR_ZERO(cracked.w,9)", t.number, 0],
  ["PLACE_OR_ZERO(cracked.w,n_bad)", t.number, /#DIV\/0!/],
  ["PLACE_OR_ZERO(cracked.v,9)", t.number, /#DIV\/0!/],
  ['LISTED(rows.name,"o*")', t.yesno, false],
  ['LISTED(rows.name,"<>elm")', t.yesno, false],
  ["LISTED(cracked.w,n_bad)", t.yesno, /#DIV\/0!/],
  ["LISTED(cracked.v,3.25)", t.yesno, /#DIV\/0!/],
  ["COUNT_WHERE(cracked.v,3.25)", t.number, /#DIV\/0!/],
  ["COUNT_WHERE(rows.y,2)", t.number, 2],
  ["WHOLE_UP(110.0000000001)", t.number, 110],
  ["WHOLE_UP(110.00001)", t.number, 111],
  ["WHOLE_UP(-0.5)", t.number, -1],
  ['SUM_WHERE(rows.x,rows.name,"oak")', t.number, 1],
  ['SUM_WHERE(rows.x,rows.name,"yew")', t.number, 0],
  ["SUM_WHERE(cracked.w,cracked.v,3.25)", t.number, /#DIV\/0!/],
  ["SUM_WHERE(cracked.v,cracked.w,3)", t.number, /#DIV\/0!/],
  ["SUM_WHERE(cracked.w,cracked.w,n_bad)", t.number, /#DIV\/0!/],
  ['LARGEST_WHERE(cracked.w,rows.name,"oak")', t.number, 5],
  ['LEAST_WHERE(cracked.w,rows.name,"oak")', t.number, 1],
  ['LARGEST_WHERE(cracked.w,rows.name,"yew")', t.number, 0],
  ['LEAST_WHERE(cracked.w,rows.name,"yew")', t.number, 0],
  ["LARGEST_WHERE(cracked.v,cracked.w,3)", t.number, 3.25],
  ["LARGEST_WHERE(cracked.v,cracked.w,2)", t.number, /#DIV\/0!/],
  ["LEAST_WHERE(cracked.w,cracked.v,3.25)", t.number, /#DIV\/0!/],
  ["LARGEST_WHERE(cracked.w,cracked.w,n_bad)", t.number, /#DIV\/0!/],
  ["INDEX(single.size,1)", t.length, 5],
  ["INDEX(single.size,INDEX(single.place,1))*2", t.length, 10],
  ["INDEX(single.size,1+INDEX(single.place,1))", t.length, /#REF!/],
  ["INDEX(single.size_gone,1)", t.length, 0],
  ["INDEX(single.size_gone,1)=0[ft]", t.yesno, true],
  ["INDEX(single.twice,1)", t.length, 10],
  ["INDEX(single.kind,1)", t.text, "Oak"],
  ['INDEX(single.kind_gone,1)&"!"', t.text, "!"],
  ['INDEX(single.kind_gone,1)=""', t.yesno, true],
  ["LEN(INDEX(single.kind_gone,1))>0", t.yesno, false],
  ["INDEX(single.wet,1)", t.yesno, true],
  ["INDEX(single.wet_gone,1)=FALSE", t.yesno, true],
  ["INDEX(single.wet_gone,INDEX(single.place,1))=FALSE", t.yesno, true],
  ["INDEX(single.size_gone,INDEX(single.place,1))=0[ft]", t.yesno, true],
  ['INDEX(single.kind_gone,INDEX(single.place,1))&"!"', t.text, "!"],
  ['INDEX(single.kind_gone,INDEX(single.place,1))=""', t.yesno, true],
  ["LEN(INDEX(single.kind_gone,INDEX(single.place,1)))>0", t.yesno, false],
  ["INDEX(single.kind_gone,INDEX(single.place,1))", t.text, ""],
  ["SUMPRODUCT((rows.y=INDEX(single.twice,1)/5[ft])*1)", t.count, 2],
  ['PICK(single.size,single.kind,"oak")', t.length, 5],
  ['PICK(single.size,single.kind,"yew")', t.length, /#N\/A/],
  ['PICK_OR(single.kind,single.size,5[ft],"none")', t.text, "Oak"],
  ['PICK_OR(single.size,single.kind,"yew",7[ft])', t.length, 7],
  ["PLACE_OR_ZERO(single.size,5[ft])", t.count, 1],
  ['SUM_WHERE(single.size,single.kind,"oak")', t.length, 5],
  ['LARGEST_WHERE(single.twice,single.kind,"oak")', t.length, 10],
];
