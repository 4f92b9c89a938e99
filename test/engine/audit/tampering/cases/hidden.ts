import type { Tampered } from "../../../../support/tamper.js";
import type { Case } from "../run.js";

/** Hides rows of the customer's page. */
const rows =
  (...lines: number[]) =>
  (book: Tampered) => {
    for (const line of lines) {
      book.sheet("Letter", (xml) => xml.replace(`<row r="${line}"`, `<row hidden="1" r="${line}"`));
    }
  };

const told = (found: string, where = "sheet Letter") =>
  ({
    grade: where === "sheet Letter" ? "wrong" : "doubtful",
    code: "hidden",
    where,
    found,
  }) as const;

/** Rows and columns out of sight: which, and what stands in them. */
export const hiddenCases: readonly Case[] = [
  {
    what: "the row of the price hidden",
    edit: rows(5),
    verdict: "found",
    figure: true,
    finds: told('row 5 "Price $4,087" is hidden'),
  },
  {
    what: "two rows hidden",
    edit: rows(8, 13),
    verdict: "found",
    finds: told('rows 8 "For Customer One" and 13 "Call before you dig." are hidden'),
  },
  {
    what: "five rows hidden",
    edit: rows(8, 9, 10, 13, 14),
    verdict: "found",
    figure: true,
    finds: told(
      'rows 8 "For Customer One", 9 "A fence of 107 ft", 10 "Price: $4,087" and 2 more are hidden',
    ),
  },
  {
    what: "a row hidden that holds nothing",
    edit: rows(11),
    verdict: "silent",
    harmless: true,
  },
  {
    what: "a spare row shown, and the row of a price hidden in its place",
    edit: (book) => {
      book.sheet("Summary", (xml) => xml.replace(/(<row r="7"[^>]*?) hidden="1"/, "$1"));
      book.sheet("Summary", (xml) => xml.replace('<row r="10"', '<row hidden="1" r="10"'));
    },
    verdict: "found",
    figure: true,
    finds: { code: "hidden", where: "sheet Summary" },
  },
  {
    what: "the column of the prices hidden",
    edit: (book) =>
      book.sheet("Price", (xml) => xml.replace('<col min="1"', '<col hidden="1" min="1"')),
    verdict: "found",
    finds: told('column A "Price What it costs." is hidden', "sheet Price"),
  },
];
