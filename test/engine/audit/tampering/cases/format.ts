import { expect } from "vitest";
import { restyle } from "../../../../support/restyle.js";
import type { Tampered } from "../../../../support/tamper.js";
import type { Case } from "../run.js";
import { rule } from "./sight.js";

const price = (format: string) => (book: Tampered) => restyle(book, "Letter", "B5", { format });

/** Another figure is read by the format than the cell holds. */
const reads = (shows: string) =>
  ({
    code: "number-format",
    grade: "wrong",
    where: "Letter!B5",
    found: expect.stringContaining(` shows ${shows} where the cell holds $4,087`),
  }) as const;

const changed = { code: "number-format", grade: "doubtful", where: "Letter!B5" } as const;

/** Each: what the format does, its code, and what the price is read as by it. */
const misread: [string, string, string][] = [
  ["prints thousands for dollars", '"$"#,##0.00,', "$4.09"],
  ["prints one fixed figure", '"$3,500"', "$3,500"],
  ["prints a fixed figure for this price alone", '[=0]"";[>4000]"$3,500";"$"#,##0', "$3,500"],
  ["puts a digit before the figure", '"$1"#,##0', "$14,087"],
  ["puts a digit behind the figure", '"$"#,##0"0"', "$4,0870"],
  ["fills the cell with nines", '"$"*9#,##0', "$994,087"],
  ["prints nothing", ";;;", "nothing"],
  ["prints in white", '[White]"$"#,##0', "nothing"],
  ["prints in a numbered colour that is white", '[Color 2]"$"#,##0', "nothing"],
  ["prints words for the figure", '"by agreement"', "by agreement"],
  ["prints per cent", "0%", "408702%"],
  ["prints a day", "mmm d, yyyy", "Mar 10, 1911"],
  ["prints a reduction behind the figure", '"$"#,##0" less 10%"', "$4,087 less 10%"],
  ["prints the figure as one that is owed to the customer", '-"$"#,##0', "-$4,087"],
  ["puts a point for the comma", '"$"#"."##0', "$4.087"],
];

/** Number formats of cells and of rules: by some another figure is read than the cell holds. */
export const formatCases: readonly Case[] = [
  ...misread.map(
    ([what, format, shows]): Case => ({
      what: `a number format that ${what}`,
      edit: price(format),
      verdict: "found",
      figure: true,
      finds: reads(shows),
    }),
  ),
  {
    what: "a number format with other decimals",
    edit: price('"$"#,##0'),
    verdict: "found",
    figure: true,
    finds: changed,
  },
  {
    what: "a number format with more decimals than the price is told with",
    edit: price('"$"#,##0.000'),
    verdict: "found",
    finds: changed,
  },
  {
    what: "no number format",
    edit: price("General"),
    verdict: "found",
    finds: changed,
  },
  {
    what: "the same number format spelled otherwise",
    edit: price("[>=1000]\\$#,##0_);[<=-1000]\\-\\$#,##0;\\$#,##0.00"),
    verdict: "silent",
    harmless: true,
  },
  {
    what: "a number format of texts that prints other words",
    edit: (book) => restyle(book, "Letter", "A10", { format: '0;0;0;"Price: $3,500"' }),
    verdict: "found",
    figure: true,
    finds: {
      code: "number-format",
      grade: "wrong",
      where: "Letter!A10",
      found: expect.stringContaining("shows Price: $3,500 where the cell holds Price: $4,087"),
    },
  },
  {
    what: "a rule that prints another figure",
    edit: (book) =>
      rule(book, "Letter", "B5", '<numFmt numFmtId="401" formatCode="&quot;$3,500&quot;"/>'),
    verdict: "found",
    figure: true,
    finds: {
      code: "look",
      grade: "wrong",
      where: "Letter!B5",
      found: expect.stringContaining("shows $3,500 where the cell holds $4,087"),
    },
  },
  {
    what: "a rule that prints the same figure with cents",
    edit: (book) =>
      rule(book, "Letter", "B5", '<numFmt numFmtId="401" formatCode="&quot;$&quot;#,##0.00"/>'),
    verdict: "found",
    finds: { code: "look", grade: "doubtful", where: "Letter!B5" },
  },
];
