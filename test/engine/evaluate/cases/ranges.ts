import { byHand, error, given, illegal, ours, standard } from "./case.js";

const mixed = [3, null, "b", "a1", true, -2.5, 8, 1, 8];

export const aggregateCases = [
  given("SUM", [[1, 2.5, -4]], -0.5, byHand),
  given("SUM", [mixed], 17.5, standard, {
    note: "LibreOffice counts TRUE among the cells of a range as 1",
    office: 18.5,
  }),
  given("SUM", [[null, null]], 0, standard),
  given("SUM", [[1, 2], 10, [3]], 16, byHand),
  given("MIN", [[3, null, 2.5]], 2.5, standard),
  given("MIN", [["b", null]], 0, standard),
  given("MIN", [null, 5], 5, standard),
  given("MIN", [-1, [4, -7]], -7, byHand),
  given("MAX", [[-3, null, -2.5]], -2.5, standard),
  given("MAX", [["b", null]], 0, standard),
  given("MAX", [null, -5], -5, standard),
  given("MAX", [[0, "9"], 4], 4, standard),
  given(
    "SUMPRODUCT",
    [
      [1, 2, 3],
      [4, 5, 6],
    ],
    32,
    byHand,
  ),
  given(
    "SUMPRODUCT",
    [
      [1, "x", null, 3],
      [4, 5, 6, 7],
    ],
    25,
    standard,
  ),
  given("SUMPRODUCT", [[1, 2.5, -1]], 2.5, byHand),
  given(
    "SUMPRODUCT",
    [
      [1, 2],
      [1, 2, 3],
    ],
    error("#VALUE!"),
    standard,
  ),
  given(
    "SUMPRODUCT",
    [
      [true, 2],
      [4, 5],
    ],
    10,
    standard,
    {
      note: "what is no number counts as zero; LibreOffice counts TRUE as 1: no truth values here",
      office: 14,
    },
  ),
  given("SMALL", [mixed, 2], 1, byHand),
  given("SMALL", [[5, 5, 1], 2], 5, byHand),
  given("SMALL", [[5, 5, 1], 0], error("#NUM!"), standard, illegal),
  given("SMALL", [[null, "x"], 1], error("#NUM!"), standard, illegal),
  given("LARGE", [mixed, 2], 8, byHand),
  given("LARGE", [[-5, -1, -9], 1], -1, byHand),
  given("LARGE", [[5, 1], 3], error("#NUM!"), standard, illegal),
  given("AND", [true, true], true, standard),
  given("AND", [[true, null, true]], true, standard),
  given("AND", [[true, "x", false]], false, standard),
  given("AND", [1, 0], false, standard),
  given("AND", [[null, null]], error("#VALUE!"), standard),
  given("OR", [false, true], true, standard),
  given("OR", [[false, null, "x"]], false, standard),
  given("OR", [0, 0], false, standard),
  given("OR", [[null]], error("#VALUE!"), standard),
  given("NOT", [true], false, standard),
  given("NOT", [0], true, standard),
  given("NOT", [null], true, standard),
  given("NOT", ["x"], error("#VALUE!"), standard),
  given("ISNUMBER", [0], true, standard),
  given("ISNUMBER", ["5"], false, standard),
  given("ISNUMBER", [null], false, standard),
  given("ISNUMBER", [true], false, standard, {
    note: "LibreOffice takes truth values for numbers",
    office: true,
  }),
];

const size = [1, 2, null, "x", 4];
const kind = ["lip", "LIP", "wall", null, "lip"];
const load = [10, 20, 30, 40, "n/a"];

const wrong = error("#DIV/0!");
const cracked = [3, wrong, 7];
const passedOver = { note: "an error in another row is passed over: see refused.ts" };

/** Errors among what a function looks through: kept, but by those that templates may not call. */
export const errorCases = [
  given("SUM", [cracked], wrong, standard),
  given("MIN", [cracked], wrong, standard),
  given("MAX", [cracked], wrong, standard),
  given("SMALL", [cracked, 1], wrong, standard),
  given("LARGE", [cracked, 1], wrong, standard),
  given("SUMPRODUCT", [cracked], wrong, standard),
  given("SUMPRODUCT", [cracked, [0, 0, 0]], wrong, standard),
  given("AND", [[false, wrong]], wrong, standard),
  given("OR", [[true, wrong]], wrong, standard),
  given("INDEX", [cracked, 3], 7, standard),
  given("INDEX", [cracked, 2], wrong, standard),
  given("MATCH", [7, cracked, 0], 3, standard),
  given("COUNTIF", [cracked, ">0"], 2, standard, passedOver),
  given("COUNTIFS", [cracked, ">0", [1, 1, 1], 1], 2, standard, passedOver),
  given("MAXIFS", [cracked, [1, 2, 1], 1], 7, standard, passedOver),
  given("MAXIFS", [[3, 5, 7], [1, wrong, 2], 1], 3, standard, passedOver),
  given("MAXIFS", [cracked, [1, 1, 2], 1], wrong, standard),
  given("MINIFS", [cracked, [1, 2, 1], 1], 3, standard, passedOver),
  given("MINIFS", [cracked, [2, 1, 2], 1], wrong, standard),
];
const noMatch = {
  note: "0 in some programs, an error in Gnumeric: look-ups in templates ask first",
  gnumeric: error("#DIV/0!"),
};

export const conditionalCases = [
  given("COUNTIF", [kind, "lip"], 3, byHand),
  given("COUNTIF", [size, ">1"], 2, byHand),
  given("COUNTIF", [size, "<>"], 4, standard),
  given("COUNTIF", [size, "<>4"], 4, byHand),
  given("COUNTIF", [size, 4], 1, byHand),
  given("COUNTIF", [size, "="], 1, standard),
  given("COUNTIF", [kind, "w*"], 1, standard),
  given("COUNTIF", [kind, "l?p"], 3, standard),
  given("COUNTIF", [["a*", "ab"], "a~*"], 1, standard),
  given("COUNTIF", [kind, "<>lip"], 2, byHand),
  given("COUNTIF", [kind, ">m"], 1, standard),
  given("COUNTIF", [[0, null, ""], 0], 1, standard),
  given("COUNTIF", [[0, null, 3], null], 1, standard, {
    note: "a reference to an empty cell looks for 0; Gnumeric finds nothing",
    gnumeric: 0,
  }),
  given("COUNTIF", [[-1, -0.5, 0], "<0"], 2, byHand),
  given("COUNTIFS", [kind, "lip", size, ">1"], 2, byHand),
  given("COUNTIFS", [size, ">=1", size, "<4"], 2, byHand),
  given("COUNTIFS", [[0, null, 0], null, [1, 1, 2], ">1"], 1, standard),
  given("COUNTIFS", [kind, "sand", size, ">0"], 0, byHand),
  given("COUNTIFS", [[1, 2], 1, [1, 2, 3], 1], error("#VALUE!"), standard),
  given("MAXIFS", [load, kind, "lip"], 20, byHand),
  given("MAXIFS", [[-5, -2, 7], [1, 1, 0], 1], -2, byHand),
  given("MAXIFS", [load, [0, null, 0, null, 1], null], 30, standard),
  given("MAXIFS", [load, kind, "sand"], 0, standard, noMatch),
  given("MINIFS", [load, kind, "lip"], 10, byHand),
  given("MINIFS", [[-5, -2, 7], [1, 0, 1], ">0"], -5, byHand),
  given("MINIFS", [load, [0, null, 0, null, 1], null], 10, standard),
  given("MINIFS", [load, size, ">100"], 0, standard, noMatch),
  given("MAXIFS", [load, kind, "w*"], 30, standard),
  given("MAXIFS", [load, kind, "l?p"], 20, standard),
  given("MAXIFS", [[1, 2], ["a*", "ab"], "a~*"], 1, standard),
  given("MAXIFS", [load, kind, "<>lip"], 40, byHand),
  given("MAXIFS", [load, kind, ">m"], 30, standard),
  given("MAXIFS", [load, size, "<>4"], 40, byHand),
  given("MAXIFS", [load, size, "<>"], 40, standard),
  given("MAXIFS", [load, size, "="], 30, standard),
  given("MAXIFS", [load, kind, "lip", size, "<2"], 10, byHand),
  given("MINIFS", [load, size, "<=4"], 10, byHand),
  given("MINIFS", [load, size, 4], 0, "no number among the rows", noMatch),
  given("MINIFS", [[1, 2], [1, 2, 3], 1], error("#VALUE!"), standard),
];

export const lookupCases = [
  given("INDEX", [[5, "x", 7], 3], 7, byHand),
  given("INDEX", [[5, "x", 7], 2], "x", byHand),
  given("INDEX", [[5, 6, 7], 1.9], 5, standard),
  given("INDEX", [[5, null, 7], 2], 0, "a formula's value is never blank", {
    note: "blank inside a formula, 0 as the value of the cell",
  }),
  given("INDEX", [[5, 6], 3], error("#REF!"), standard, {
    note: "hyperformula's own gives #NUM!; LibreOffice stores #VALUE!",
    office: error("#VALUE!"),
  }),
  given("INDEX", [[5, 6], -1], error("#VALUE!"), standard, {
    note: "another error in Gnumeric",
    gnumeric: error("#REF!"),
  }),
  given("MATCH", [7, [5, "x", 7], 0], 3, byHand),
  given("MATCH", ["BASIN", ["pump", "Basin", "basin"], 0], 2, standard),
  given("MATCH", [5, ["5", 5], 0], 2, standard),
  given("MATCH", [null, [null, 0, 1], 0], 2, standard, {
    note: "a reference to an empty cell looks for 0; LibreOffice and Gnumeric find nothing",
    office: error("#N/A"),
    gnumeric: error("#N/A"),
  }),
  given("MATCH", [9, [1, 2], 0], error("#N/A"), standard),
  given("MATCH", ["b*", ["basin", "b*"], 0], 2, ours, {
    note: "spreadsheet programs read * in a text looked for as any run, and find place 1",
    office: 1,
    gnumeric: 1,
  }),
  given("MATCH", ["é", ["e", "É"], 0], 2, standard),
];
