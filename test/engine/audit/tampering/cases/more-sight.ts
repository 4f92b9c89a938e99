import { expect } from "vitest";
import { attach, partOf, restyle } from "../../../../support/restyle.js";
import type { Tampered } from "../../../../support/tamper.js";
import type { Case } from "../run.js";

const letter = (pattern: string | RegExp, to: string) => (book: Tampered) =>
  book.sheet("Letter", (xml) => xml.replace(pattern, to));

/** Gives the price of the page the last fill or border of the styles, after it was put there. */
function styled(book: Tampered, list: "fills" | "borders", item: string): void {
  const body =
    new RegExp(`<${list}[^>]*>(.*?)</${list}>`, "s").exec(book.text("xl/styles.xml"))?.[1] ?? "";
  const one = list.slice(0, -1);
  const place = body.match(new RegExp(`<${one}[> /]`, "g"))?.length ?? 0;
  restyle(book, "Letter", "B5", { font: '<sz val="10"/><name val="Arial"/>' });
  book.change("xl/styles.xml", (xml) => {
    const made = xml.replace(`</${list}>`, `${item}</${list}>`);
    const last = made.lastIndexOf(`${one}Id="`, made.indexOf("</cellXfs>"));
    return made.slice(0, last) + made.slice(last).replace(/Id="\d+"/, `Id="${place}"`);
  });
}

const unseen = (found: string) =>
  ({ code: "look", where: "Letter!B5", found: expect.stringContaining(found) }) as const;
const onLetter = (code: "look" | "calculation" | "carried", found: string) =>
  ({ code, where: "sheet Letter", found: expect.stringContaining(found) }) as const;

const shade = (color: string) =>
  letter(
    "<pageMargins",
    `<conditionalFormatting sqref="B5"><cfRule type="colorScale" priority="90"><colorScale><cfvo type="min"/><cfvo type="max"/><color rgb="FF${color}"/><color rgb="FF${color}"/></colorScale></cfRule></conditionalFormatting><pageMargins`,
  );

/** A link of a sheet to a place outside. */
function linked(book: Tampered, sheet: string, address: string): void {
  const part = partOf(book, sheet);
  const id = attach(book, part, "hyperlink", "example.invalid/pay", "");
  book.sheet(sheet, (xml) =>
    xml.replace(
      "<pageMargins",
      `<hyperlinks><hyperlink ref="${address}" r:id="${id}"/></hyperlinks><pageMargins`,
    ),
  );
}

/** Further ways to have a reader see something else, without any value changed. */
export const moreSightCases: readonly Case[] = [
  {
    what: "text too large for its cell",
    edit: (book) => restyle(book, "Letter", "B5", { font: '<sz val="90"/><name val="Arial"/>' }),
    verdict: "found",
    figure: true,
    finds: unseen("text of 90 points"),
  },
  {
    what: "a heading's text made somewhat larger",
    edit: (book) => restyle(book, "Letter", "A4", { font: '<sz val="14"/><name val="Arial"/>' }),
    verdict: "silent",
    harmless: true,
  },
  {
    what: "a figure crossed out by lines from corner to corner",
    edit: (book) =>
      styled(
        book,
        "borders",
        '<border diagonalUp="1" diagonalDown="1"><left/><right/><top/><bottom/><diagonal style="thick"/></border>',
      ),
    verdict: "found",
    figure: true,
    finds: unseen("crossed out"),
  },
  {
    what: "black text on a dark gradient",
    edit: (book) =>
      styled(
        book,
        "fills",
        '<fill><gradientFill><stop position="0"><color rgb="FF000000"/></stop><stop position="1"><color rgb="FF101010"/></stop></gradientFill></fill>',
      ),
    verdict: "found",
    figure: true,
    finds: unseen("nobody sees"),
  },
  {
    what: "black text on a dense pattern",
    edit: (book) =>
      styled(
        book,
        "fills",
        '<fill><patternFill patternType="darkTrellis"><fgColor rgb="FF000000"/><bgColor rgb="FF000000"/></patternFill></fill>',
      ),
    verdict: "found",
    figure: true,
    finds: unseen("nobody sees"),
  },
  {
    what: "text in a numbered colour that the workbook makes white",
    edit: (book) => {
      restyle(book, "Letter", "B5", {
        font: '<sz val="10"/><color indexed="12"/><name val="Arial"/>',
      });
      const white = '<rgbColor rgb="FFFFFFFF"/>'.repeat(64);
      book.change("xl/styles.xml", (xml) =>
        xml.replace(
          "</styleSheet>",
          `<colors><indexedColors>${white}</indexedColors></colors></styleSheet>`,
        ),
      );
    },
    verdict: "found",
    figure: true,
    finds: unseen("nobody sees"),
  },
  {
    what: "a rule that shades the price black",
    edit: shade("000000"),
    verdict: "found",
    figure: true,
    finds: unseen("a rule that hides the text"),
  },
  {
    what: "a rule that shades it in pale colours",
    edit: shade("FFFF99"),
    verdict: "note",
    harmless: true,
    finds: { code: "look", where: "Letter!B5" },
  },
  {
    what: "a hint beside the price that tells another one",
    edit: letter(
      "<pageMargins",
      '<dataValidations count="1"><dataValidation type="none" showInputMessage="1" prompt="Agreed: $3,500" sqref="B5"/></dataValidations><pageMargins',
    ),
    verdict: "found",
    finds: {
      code: "text-changed",
      where: "Letter!B5",
      found: 'the hint "Agreed: $3,500" beside it',
    },
  },
  {
    what: "a link to a place outside on the customer's page",
    edit: (book) => linked(book, "Letter", "B5"),
    verdict: "found",
    finds: onLetter("carried", "links to places outside"),
  },
  {
    what: "a link to a place outside on a sheet of the office",
    edit: (book) => linked(book, "Site", "A20"),
    verdict: "note",
    harmless: true,
    finds: { code: "carried", where: "sheet Site" },
  },
  {
    what: "a sheet calculated by the rules of an old program",
    edit: letter("<sheetPr>", '<sheetPr transitionEvaluation="1">'),
    verdict: "found",
    finds: onLetter("calculation", "rules of an old program"),
  },
  {
    what: "notes printed with the page",
    edit: letter("<pageSetup ", '<pageSetup cellComments="atEnd" '),
    verdict: "found",
    finds: onLetter("look", "notes of the cells are printed"),
  },
  {
    what: "a sheet shown at a tenth of its size",
    edit: letter("<sheetView ", '<sheetView zoomScale="10" '),
    verdict: "found",
    finds: onLetter("look", "shown at 10 %"),
  },
  {
    what: "a sheet shown somewhat larger",
    edit: letter("<sheetView ", '<sheetView zoomScale="120" '),
    verdict: "silent",
    harmless: true,
  },
];
