import { describe, expect, it } from "vitest";
import * as q from "../../../engine/units/quantity.js";
import { soilVolume, waterVolume } from "../../../sheets/vocabulary/quantities.js";
import { printed } from "../../support/scope.js";

const twice = (text: string) => [text, text] as const;

const conversions: [us: string, quantity: q.Quantity, us: string, si: string][] = [
  // the same scale: nothing is put in
  ["plot+plot", q.length, "plot+plot", "plot+plot"],
  ["plot*plot", q.area, "plot*plot", "plot*plot"],
  // two scales of one dimension
  ["plot+gap", q.length, "plot+gap/12", "plot+gap/1000"],
  ["gap+plot", q.smallLength, "gap+plot*12", "gap+plot*1000"],
  ["gap+plot", q.length, "(gap+plot*12)/12", "(gap+plot*1000)/1000"],
  ["slow_rate", q.flow, "slow_rate/60", "slow_rate/60"],
  ["rate", q.hourlyFlow, "rate*60", "rate*60"],
  ["plot*gap", q.area, "plot*gap/12", "plot*gap/1000"],
  ["bed*gap", soilVolume, "bed*gap/324", "bed*gap/1000"],
  ["bed*plot", waterVolume, "bed*plot*7.48051948051948", "bed*plot*1000"],
  ["gap*gap*3", q.area, "gap*gap*3/144", "gap*gap*3/1000000"],
  ["gap^2", q.area, "gap^2/144", "gap^2/1000000"],
  ["SQRT(bed)", q.smallLength, "SQRT(bed)*12", "SQRT(bed)*1000"],
  ["tank/rate", q.hours, "tank/rate/60", "tank/rate/60"],
  ["wage*shift", q.money, "wage*shift", "wage*shift"],
  ["MAX(plot,gap)", q.length, "MAX(plot,gap/12)", "MAX(plot,gap/1000)"],
  ["IF(paved,plot,gap)", q.length, "IF(paved,plot,gap/12)", "IF(paved,plot,gap/1000)"],
  ["IF(plot<gap,1,2)", q.number, "IF(plot<gap/12,1,2)", "IF(plot<gap/1000,1,2)"],
  ["plot>gap", q.yesno, "plot>gap/12", "plot>gap/1000"],
  ["ROUND(plot,2)", q.smallLength, "ROUND(plot,2)*12", "ROUND(plot,2)*1000"],
  ["MOD(plot,gap)", q.length, "MOD(plot,gap/12)", "MOD(plot,gap/1000)"],
  ["pots*shift*part_of_day", q.hours, "pots*shift*part_of_day/24", "pots*shift*part_of_day/24"],
  ["-gap", q.length, "(-gap)/12", "(-gap)/1000"],
  ["2*(plot+gap)", q.length, "2*(plot+gap/12)", "2*(plot+gap/1000)"],
  ["SUM(rows.thick)", q.length, "SUM(rows.thick)/12", "SUM(rows.thick)/1000"],
  ["INDEX(rows.thick,1)", q.length, "INDEX(rows.thick,1)/12", "INDEX(rows.thick,1)/1000"],
  [
    "SUMPRODUCT(rows.width*rows.thick)",
    q.area,
    "SUMPRODUCT(rows.width*rows.thick)/12",
    "SUMPRODUCT(rows.width*rows.thick)/1000",
  ],
  [
    "SUMPRODUCT((rows.width>rows.thick)*rows.cost)",
    q.money,
    "SUMPRODUCT((rows.width>rows.thick/12)*rows.cost)",
    "SUMPRODUCT((rows.width>rows.thick/1000)*rows.cost)",
  ],
  // literals with a unit mean the same in every system
  ["plot+6[in]", q.length, "plot+6/12", "plot+6*0.0254"],
  ["plot>10[ft]", q.yesno, "plot>10", "plot>10*0.3048"],
  ["rate*8[h]", waterVolume, "rate*8*60", "rate*8*60"],
  // zero fits anything
  ["MAX(0,plot)", q.length, "MAX(0,plot)", "MAX(0,plot)"],
  ["IF(paved,0,gap)", q.smallLength, "IF(paved,0,gap)", "IF(paved,0,gap)"],
  ["0", q.money, "0", "0"],
  ["plot=0", q.yesno, "plot=0", "plot=0"],
  // yes and no in arithmetic
  ["(plot>0)*bill", q.money, "(plot>0)*bill", "(plot>0)*bill"],
  ["-(plot>0)+2", q.number, "(-(plot>0))+2", "(-(plot>0))+2"],
  // days
  ["YEAR(begun+3[days])", q.number, "YEAR(begun+3)", "YEAR(begun+3)"],
  ["DATE(2026,1,1)", q.date, "DATE(2026,1,1)", "DATE(2026,1,1)"],
  // text
  // FIXED cuts a number before it rounds in some programs: rounded first, it is the same in all
  [
    'title&FIXED(plot,1)&" ft"',
    q.text,
    'title&FIXED(ROUND(plot,1),1)&" ft"',
    'title&FIXED(ROUND(plot,1),1)&" ft"',
  ],
  ['MAXIFS(rows.cost,rows.name,"oak")', q.money, ...twice('MAXIFS(rows.cost,rows.name,"oak")')],
  [
    "MAXIFS(rows.cost,rows.thick,plot)",
    q.money,
    "MAXIFS(rows.cost,rows.thick,plot*12)",
    "MAXIFS(rows.cost,rows.thick,plot*1000)",
  ],
  ["SIN(RADIANS(30[°]))", q.number, "SIN(RADIANS(30))", "SIN(RADIANS(30))"],
  ["TEXTJOIN(title,TRUE,rows.name)", q.text, ...twice("TEXTJOIN(title,TRUE,rows.name)")],
  [
    "MINIFS(rows.cost,rows.name,title,rows.at,1)",
    q.money,
    ...twice("MINIFS(rows.cost,rows.name,title,rows.at,1)"),
  ],
  ["ROUNDUP(ROUND(share,6),0)", q.number, "ROUNDUP(ROUND(share,6),0)", "ROUNDUP(ROUND(share,6),0)"],
];

describe("conversions go in where scales meet, and are seen", () => {
  it.each(conversions)("%s", (formula, quantity, us, si) => {
    expect(printed(formula, quantity, "us")).toBe(us);
    expect(printed(formula, quantity, "si")).toBe(si);
  });
});

const refused: [formula: string, quantity: q.Quantity, reason: RegExp][] = [
  // names
  ["plott", q.length, /the name "plott" is not known\. Did you mean "plot"\?/],
  ["PLOT", q.length, /the name "PLOT" is not known\. Did you mean "plot"\?/],
  ["rows.widht", q.length, /the name "rows\.widht" is not known\. Did you mean "rows\.width"\?/],
  ["something_else_entirely", q.length, /"something_else_entirely" is not known\. \(at/],
  ["constructor", q.number, /the name "constructor" is not known/],
  // functions
  ["SUMM(plot)", q.length, /the function SUMM is not on the list .* Did you mean "SUM"\?/],
  ["VLOOKUP(plot,plot,1,0)", q.length, /the function VLOOKUP is not on the list/],
  ["WEBSERVICE(title)", q.text, /the function WEBSERVICE is not on the list/],
  ["TOSTRING(plot)", q.text, /the function TOSTRING is not on the list/],
  ["ABS()", q.number, /ABS takes 1 arguments, not 0/],
  ["IF(paved,1)", q.number, /IF takes 3 arguments, not 2/],
  ["PI(1)", q.number, /PI takes 0 arguments, not 1/],
  ["CHOOSE(1)", q.number, /CHOOSE takes 2 to 30 arguments, not 1/],
  // quantities
  ["plot", q.area, /the result should be length\^2 but is length/],
  ["plot+bed", q.length, /"\+" cannot take length with length\^2/],
  ["plot-bill", q.length, /"-" cannot take length with money/],
  ["plot+1", q.length, /"\+" cannot take length with a plain number/],
  ["1+plot", q.length, /"\+" cannot take a plain number with length/],
  ["plot<tank", q.yesno, /"<" cannot take length with length\^3/],
  ["paved=1", q.yesno, /"=" cannot take yes or no with a plain number/],
  ["title=0", q.yesno, /"=" cannot take text with zero/],
  ["0=title", q.yesno, /"=" cannot take zero with text/],
  ["plot+0*bill", q.length, /"\+" cannot take length with money/],
  ["MAX(plot,bill)", q.length, /it of MAX should be length but is money/],
  ["IF(paved,plot,bill)", q.length, /each branch of IF should be length but is money/],
  ['IF(paved,plot,"none")', q.length, /each branch of IF should be length but is text/],
  ["IF(plot,1,2)", q.number, /the condition of IF should be yes or no but is length/],
  ["EXP(plot)", q.number, /its argument of EXP should be a plain number but is length/],
  ["SQRT(title)", q.number, /SQRT: it takes a number, not text/],
  ["SIN(30[°])", q.number, /should be a plain number but is angle/],
  ["plot^share", q.length, /a power of length needs a number as its exponent/],
  ["2^plot", q.number, /an exponent should be a plain number but is length/],
  ["part_of_day^2", q.number, /a power of a number that is not plain/],
  ["plot%", q.number, /a per cent should be a plain number but is length/],
  ["ROUND(plot,gap)", q.length, /its further argument of ROUND should be a plain number/],
  ["AND(paved,pots)", q.yesno, /a condition of AND should be yes or no but is a plain number/],
  ["6[inch]", q.length, /Unit "inch" is not known/],
  // text
  ["title+1", q.number, /"\+" takes numbers, not text/],
  ["1-title", q.number, /"-" takes numbers, not text/],
  ["paved+1", q.number, /"\+" takes numbers, not yes or no/],
  ["title*2", q.number, /"\*" takes numbers, not text/],
  ["-title", q.number, /the sign takes numbers, not text/],
  ["-(plot>0)", q.yesno, /the result should be yes or no but is a plain number/],
  ["SUM(title)", q.number, /SUM: it takes numbers, not text/],
  ["title&plot", q.text, /"&" joins texts, not length: write numbers with FIXED/],
  ["1&title", q.text, /"&" joins texts, not a plain number/],
  ["plot", q.text, /the result should be text but is length/],
  ["LEN(plot)", q.number, /argument 1 of LEN should be text but is length/],
  // columns
  ["rows.width", q.length, /the result should be one value but is a whole column/],
  ["rows.width*2", q.length, /the result should be one value but is a whole column/],
  ["ABS(rows.width)", q.length, /ABS takes single values, not a whole column/],
  ["SUM(rows.width*2)", q.length, /SUM cannot calculate with a whole column: use SUMPRODUCT/],
  ["SUM(rows.width,rows.thick)", q.length, /SUM cannot calculate with a whole column/],
  ["MAX(-rows.width)", q.length, /MAX cannot calculate with a whole column/],
  ["IF(rows.used,1,0)", q.number, /IF takes single values, not a whole column/],
  ["IF(rows.width>0[ft],1,0)", q.number, /IF cannot calculate with a whole column/],
  ["SUMPRODUCT(ABS(rows.width))", q.length, /ABS takes single values, not a whole column/],
  ["SUMPRODUCT(rows.name)", q.number, /SUMPRODUCT: it adds up numbers, not text/],
  ["INDEX(plot,1)", q.length, /INDEX: it picks from a whole column/],
  ["INDEX(rows.width,rows.width)", q.length, /the position of INDEX should be a plain number/],
  ["INDEX(rows.width,rows.at)", q.length, /argument 2 of INDEX cannot be a whole column/],
  ["SMALL(rows.width,rows.at)", q.length, /argument 2 of SMALL cannot be a whole column/],
  ["MATCH(rows.name,rows.name,0)", q.count, /argument 1 of MATCH cannot be a whole column/],
  ["MAXIFS(rows.cost,rows.at,rows.at)", q.money, /argument 3 of MAXIFS cannot be a whole/],
  ["MAXIFS(rows.cost,plot,1)", q.money, /MAXIFS: a criterion looks through a whole column/],
  ["MAXIFS(rows.cost,rows.width,title)", q.money, /of MAXIFS should be length but is text/],
  ["MAXIFS(rows.cost,rows.width,plot,rows.name)", q.money, /MAXIFS: its criteria come in pairs/],
  // functions that swallow errors, each with what to write
  ["IFERROR(plot,0)", q.length, /IFERROR turns any error into a figure: write PICK_OR\(/],
  ["COUNTIF(plot,1)", q.count, /COUNTIF: a criterion looks through a whole column/],
  ["SUMIF(rows.at,1,rows.cost)", q.money, /SUMIF passes over rows in error.*write SUM_WHERE\(/],
  ["SUMIFS(rows.cost,rows.at,1)", q.money, /SUMIFS passes over rows in error: write SUMPRODUCT/],
  ["NEGBINOM.DIST(1,2,0.5,TRUE)", q.number, /NEGBINOM\.DIST is written as another.*BINOM\.DIST\(/],
  ["NORM.S.DIST(1,TRUE)", q.number, /NORM\.S\.DIST is not known to every program/],
  ["COUNT(rows.at)", q.count, /COUNT passes over errors: write SUMPRODUCT/],
  // guards
  [
    "ROUNDUP(share,0)",
    q.number,
    /ROUNDUP: it rounds up without a guard: write .* ROUND\(\.\.\., 6\)/,
  ],
  ["CEILING(plot,gap)", q.length, /CEILING: it rounds up without a guard/],
  ["MATCH(title,rows.name,1)", q.count, /MATCH: its third argument must be 0 \(exact\)/],
  ["MATCH(title,rows.name,pots)", q.count, /MATCH: its third argument must be 0/],
  ["MATCH(title,title,0)", q.count, /MATCH: it looks through a whole column/],
  ["MATCH(plot,rows.name,0)", q.count, /what it looks for of MATCH should be text but is length/],
];

describe("what does not fit is refused", () => {
  it.each(refused)("%s", (formula, quantity, reason) => {
    for (const system of q.unitSystems) {
      expect(() => printed(formula, quantity, system)).toThrow(reason);
      expect(() => printed(formula, quantity, system)).toThrow(`of: ${formula})`);
    }
  });
});
