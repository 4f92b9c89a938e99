import { expect, test } from "vitest";
import { misreading, readOtherwise } from "../../../../../engine/audit/look/format/reading.js";

const money = '[>=1000]"$"#,##0;[<=-1000]-"$"#,##0;"$"#,##0.00';
const answer = '"yes";"yes";"no"';
const check = '"ok";"ok";"fails"';
const day = "mmm d, yyyy";

/** Each: what is held, the format that it was written with, another one, and what is said of that. */
const otherwise: [number | boolean | string, string, string, string][] = [
  [49450, money, '"$46,900"', "shows $46,900 where the cell holds $49,450"],
  [49450, money, '"$"#,##0"0"', "shows $49,4500 where the cell holds $49,450"],
  [49450, money, '"$4"#,##0', "shows $449,450 where the cell holds $49,450"],
  [49450, money, '"$"#,##0.00,', "shows $49.45 where the cell holds $49,450"],
  [49450, money, '0.0,"k"', "shows 49.5k where the cell holds $49,450"],
  [49450, money, "0%", "shows 4945000% where the cell holds $49,450"],
  [49450, money, '"$"*9#,##0', "shows $9949,450 where the cell holds $49,450"],
  [49450, money, '[=49450]"$46,900";"$"#,##0', "shows $46,900 where the cell holds $49,450"],
  [49450, money, '[Red][>40000]"$46,900";"$"#,##0', "shows $46,900 where the cell holds $49,450"],
  [49450, money, '"call us"', "shows call us where the cell holds $49,450"],
  [49450, money, ";;;", "shows nothing where the cell holds $49,450"],
  [49450, money, "[White]0", "shows nothing where the cell holds $49,450"],
  [49450, money, "mmm d, yyyy", "shows May 21, 2035 where the cell holds $49,450"],
  [49450, money, "[h]:mm", "shows 1186800:00 where the cell holds $49,450"],
  [49450, money, '"$"#,##0" less 5%"', "shows $49,450 less 5% where the cell holds $49,450"],
  [49450, money, '"$"#"."##0', "shows $49.450 where the cell holds $49,450"],
  [49450, money, '0"/2"', "shows 49450/2 where the cell holds $49,450"],
  [49450, money, "-0", "shows -49450 where the cell holds $49,450"],
  [49450, money, "(0)", "shows (49450) where the cell holds $49,450"],
  [-500, money, "0;0", "shows 500 where the cell holds -$500.00"],
  [0.35, "0.0%", "0", "shows 0 where the cell holds 35.0%"],
  [49450, money, "0E+00", "shows 5E+4 where the cell holds $49,450"],
  [2.46, "0.0", "0", "shows 2 where the cell holds 2.5"],
  [0, money, '0;0;"$500"', "shows $500 where the cell holds $0.00"],
  [46354, day, "0", "shows 46354 where the cell holds Nov 28, 2026"],
  [46354, day, '"Mar 1, 2027"', "shows Mar 1, 2027 where the cell holds Nov 28, 2026"],
  [46354, day, 'mmm d, "2029"', "shows Nov 28, 2029 where the cell holds Nov 28, 2026"],
  [46354, day, '"Dec" d, yyyy', "shows Dec 28, 2026 where the cell holds Nov 28, 2026"],
  [false, check, '"ok";"ok";"ok"', "shows ok where the cell holds fails"],
  [0, check, '"ok";"ok";"ok"', "shows ok where the cell holds fails"],
  [true, answer, '"no"', "shows no where the cell holds yes"],
  [
    "Price: $49,450",
    "@",
    ';;;"Price: $46,900"',
    "shows Price: $46,900 where the cell holds Price: $49,450",
  ],
  [
    "Price: $49,450",
    "General",
    '@" less $2,000"',
    "shows Price: $49,450 less $2,000 where the cell holds Price: $49,450",
  ],
  ["Price: $49,450", "General", ";;;", "shows nothing where the cell holds Price: $49,450"],
];

test.each(otherwise)("%j of %s by %s: %s", (value, own, here, said) => {
  const read = readOtherwise(value, here, own);
  expect(read && misreading(read)).toBe(said);
});

/** Each: what is held, the format that it was written with, and another one by which the same is read. */
const same: [number | boolean | string, string, string][] = [
  [49450, money, "General"],
  [49450, money, "0"],
  [49450, money, '"$"#,##0.00'],
  [49450.37, money, '"$"#,##0.00'],
  [49449.6, money, '"$49,450"'],
  [49450, money, '_("$"* #,##0_);_("$"* \\(#,##0\\);_("$"* "-"??_);_(@_)'],
  [49450, money, "0.00E+00"],
  [49450, money, "[Blue]0"],
  [49450, money, '"about $"#,##0'],
  [49450, money, '#","##0'],
  [-500, money, '"$"#,##0_);[Red]("$"#,##0)'],
  [0, money, '_("$"* #,##0_);_("$"* (#,##0);_("$"* "-"??_);_(@_)'],
  [0, money, "#"],
  [0, '#,##0;-#,##0;"none"', "0"],
  [12.5, "0.0", "# ?/?"],
  [12.5, "0.0", "0.00"],
  [1234.5, "#,##0.0", "#,##0"],
  [18.3, "0.0", "0"],
  [0.35, "0.0%", "0.00"],
  [0.35, "0.0%", "0%"],
  [46354, day, "d mmm yyyy"],
  [46354, day, "m/d/yy"],
  [46354, day, "yyyy-mm-dd"],
  [46354, day, "dddd, mmmm d"],
  [true, answer, "General"],
  [true, check, '"TRUE";"TRUE";"FALSE"'],
  [0, check, '"TRUE";"TRUE";"FALSE"'],
  [false, answer, "0"],
  ["Paid", "@", "General"],
  ["Paid", "General", '@" "'],
  ["Paid", "General", "0.00"],
];

test.each(same)("%j of %s reads the same by %s", (value, own, here) => {
  expect(readOtherwise(value, here, own)).toBeUndefined();
});
