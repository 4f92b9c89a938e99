import { describe, expect, it } from "vitest";
import * as t from "../../../engine/template/index.js";
import { faultsOf, tinyLines } from "../../support/tiny.js";

const source = "invented";
const marks = ["low", "middle", "high"];
const shelf = t.table(
  "shelf",
  "",
  { rows: 3, data: marks.map((mark, i) => ({ mark, width: i })) },
  { mark: t.published(t.text, "", { source }), width: t.published(t.number, "", { source }) },
);
const beside = (rows: number) =>
  t.table(
    "labels",
    "",
    { rows },
    { says: t.calc(t.number, (row) => `INDEX(shelf.width,${row})`, "") },
  );
const one = (formula: string, more: t.LinesBlock["cells"] = {}) =>
  tinyLines({ a: t.calc(t.number, formula, ""), ...more }, {}, [shelf]);
const choice = {
  way: t.input(t.text, "", { choices: ["by us", "by them"], default: "by us" }),
  pick: t.input(t.text, "", { choices: "shelf.mark", default: "low" }),
  free: t.input(t.text, ""),
};

const faulty: [what: string, template: t.Template, fault: RegExp][] = [
  [
    "a row that a table lacks",
    one("INDEX(shelf.width,4)"),
    /formula of a reads row 4 of shelf\.width, but the table shelf has 3 rows\. Read a row/,
  ],
  [
    "a row that a table lacks, in a sentence",
    tinyLines({ a: t.calc(t.text, "~Width {shelf.width[4]}", "") }, {}, [shelf]),
    /reads row 4 of shelf\.width/,
  ],
  [
    "a walk longer than its table",
    tinyLines({}, {}, [shelf, beside(4)]),
    /formula of labels\.says reads row 4 of shelf\.width/,
  ],
  [
    "a walk that stops short",
    tinyLines({}, {}, [shelf, beside(2)]),
    /formulas of labels\.says go over rows 1 to 2 of shelf\.width, but the table shelf has 3: the rest would be left out/,
  ],
  [
    "a walk that stops short, within one formula",
    one("INDEX(shelf.width,1)+INDEX(shelf.width,2)"),
    /formulas of a go over rows 1 to 2 of shelf\.width/,
  ],
  [
    "a key that no row has",
    one('PICK(shelf.width,shelf.mark,"hihg")'),
    /formula of a looks for "hihg" in shelf\.mark, which holds only "low", "middle", "high"\. Correct the word/,
  ],
  [
    "a key compared that no row has",
    one('IF(LISTED(shelf.mark,"top"),1,0)'),
    /looks for "top" in shelf\.mark/,
  ],
  [
    "a word that is no choice",
    one('IF(way="by me",1,0)', choice),
    /looks for "by me" in way, which holds only "by us", "by them"/,
  ],
  [
    "a word that is no choice, of those in a table",
    one('IF("top"=pick,1,0)', choice),
    /looks for "top" in pick, which holds only "low"/,
  ],
];

const sound: [what: string, template: t.Template][] = [
  ["the first row alone", one("INDEX(shelf.width,1)")],
  ["the last row alone", one("INDEX(shelf.width,3)")],
  ["all rows", tinyLines({}, {}, [shelf, beside(3)])],
  ["a key, whatever its case", one('PICK(shelf.width,shelf.mark,"High")')],
  ["a choice, and no choice made", one('IF(OR(way="by them",way=""),1,0)', choice)],
  ["any word, where any can be entered", one('IF(free="by me",1,0)', choice)],
];

const used = (template: t.Template): string[] =>
  faultsOf(template).filter((fault) => !fault.includes("is used by no formula"));

describe("rows and words written out in formulas", () => {
  it.each(faulty)("%s does not load", (_, template, fault) => {
    expect(faultsOf(template).join("\n")).toMatch(fault);
  });

  it.each(sound)("%s loads", (_, template) => {
    expect(used(template)).toEqual([]);
  });
});
