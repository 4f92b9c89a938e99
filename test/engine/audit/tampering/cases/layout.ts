import { expect } from "vitest";
import type { Finding } from "../../../../../engine/audit/finding.js";
import { restyle } from "../../../../support/restyle.js";
import type { Tampered } from "../../../../support/tamper.js";
import type { Case } from "../run.js";

const price = (alignment: string) => (book: Tampered) =>
  restyle(book, "Letter", "B5", { alignment });
const letter = (from: string | RegExp, to: string) => (book: Tampered) =>
  book.sheet("Letter", (xml) => xml.replace(from, to));
const site = (from: string | RegExp, to: string) => (book: Tampered) =>
  book.sheet("Site", (xml) => xml.replace(from, to));
const end = /<legacyDrawing|<\/worksheet>/;

const told = (where: string, words: string): Partial<Finding> => ({
  code: "look",
  where,
  found: expect.stringContaining(words),
});
const onLetter = (words: string) => told("sheet Letter", words);

/** How text is set in its cell, how pages are cut, what a screen reaches, and what may be typed. */
export const layoutCases: readonly Case[] = [
  {
    what: "the price turned on its side",
    edit: price('textRotation="90"'),
    verdict: "found",
    figure: true,
    finds: told("Letter!B5", "turned"),
  },
  {
    what: "the price in letters one below another",
    edit: price('textRotation="255"'),
    verdict: "found",
    figure: true,
    finds: told("Letter!B5", "one below another"),
  },
  {
    what: "the price shown again and again in its cell",
    edit: price('horizontal="fill"'),
    verdict: "found",
    figure: true,
    finds: told("Letter!B5", "again and again"),
  },
  {
    what: "the price read from right to left",
    edit: price('readingOrder="2"'),
    verdict: "found",
    figure: true,
    finds: told("Letter!B5", "right to left"),
  },
  {
    what: "the price set to the right of its cell",
    edit: price('horizontal="right"'),
    verdict: "silent",
    harmless: true,
  },
  {
    what: "a long text cut at its first line",
    edit: (book) => restyle(book, "Summary", "A28", { alignment: 'vertical="top"' }),
    verdict: "found",
    finds: told("Summary!A28", "cut at its first line"),
  },
  {
    what: "a page that begins between two columns",
    edit: letter(
      end,
      '<colBreaks count="1" manualBreakCount="1"><brk id="1" max="1048575" man="1"/></colBreaks>$&',
    ),
    verdict: "found",
    figure: true,
    finds: onLetter("between two columns"),
  },
  {
    what: "pages that begin elsewhere",
    edit: letter(
      end,
      '<rowBreaks count="1" manualBreakCount="1"><brk id="7" max="16383" man="1"/></rowBreaks>$&',
    ),
    verdict: "note",
    harmless: true,
    finds: onLetter("page breaks more"),
  },
  {
    what: "margins that leave nothing of the page",
    edit: letter(/<pageMargins left="[^"]*"/, '<pageMargins left="7"'),
    verdict: "found",
    finds: onLetter("margin of 7 in"),
  },
  {
    what: "a margin somewhat wider",
    edit: letter(/<pageMargins left="[^"]*"/, '<pageMargins left="0.75"'),
    verdict: "silent",
    harmless: true,
  },
  {
    what: "charts and pictures left out on paper",
    edit: letter("<pageSetup ", '<pageSetup draft="1" '),
    verdict: "found",
    finds: onLetter("charts and pictures are not printed"),
  },
  {
    what: "all lines squeezed onto one page",
    edit: (book) => book.sheet("Names", (xml) => xml.replace('fitToHeight="0"', 'fitToHeight="1"')),
    verdict: "found",
    finds: told("sheet Names", "squeezed onto 1 page"),
  },
  {
    what: "the screen frozen below the price",
    edit: letter("<sheetView ", '<sheetView topLeftCell="A7" '),
    verdict: "found",
    figure: true,
    finds: onLetter("frozen at A7"),
  },
  {
    what: "so many lines frozen that the rest cannot be reached",
    edit: letter('ySplit="2"', 'ySplit="60"'),
    verdict: "found",
    finds: onLetter("60 lines are frozen"),
  },
  {
    what: "a sheet scrolled down",
    edit: letter('topLeftCell="A3"', 'topLeftCell="A9"'),
    verdict: "silent",
    harmless: true,
  },
  {
    what: "a hint for what is typed reworded",
    edit: site(/ prompt="[^"]*"/, ' prompt="In meters."'),
    verdict: "found",
    finds: { code: "text-changed", found: expect.stringContaining("In meters.") },
  },
  {
    what: "a choice more in the list of an input",
    edit: (book) => book.sheet("Runs", (xml) => xml.replace("TRUE,FALSE", "TRUE,FALSE,gold")),
    verdict: "note",
    finds: { code: "rule-missing", found: expect.stringContaining("gold") },
  },
  {
    what: "other limits for what may be typed",
    edit: site(/<formula2>[\d.]+/, "<formula2>987654"),
    verdict: "note",
    finds: { code: "rule-missing", found: expect.stringContaining("987654") },
  },
];
