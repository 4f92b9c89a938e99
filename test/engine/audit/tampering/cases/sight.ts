import { expect } from "vitest";
import { attach, partOf, restyle } from "../../../../support/restyle.js";
import type { Tampered } from "../../../../support/tamper.js";
import type { Case } from "../run.js";

const price = (to: Parameters<typeof restyle>[3]) => (book: Tampered) =>
  restyle(book, "Letter", "B5", to);
const anywhere = expect.stringContaining("Letter");

/** A rule of conditional format over cells, with the look that it gives. */
export function rule(book: Tampered, sheet: string, area: string, look: string): Tampered {
  const looks = book.text("xl/styles.xml").match(/<dxf>/g)?.length ?? 0;
  book.change("xl/styles.xml", (xml) => xml.replace("</dxfs>", () => `<dxf>${look}</dxf></dxfs>`));
  const made = `<conditionalFormatting sqref="${area}"><cfRule type="expression" dxfId="${looks}" priority="9"><formula>1=1</formula></cfRule></conditionalFormatting>`;
  return book.sheet(sheet, (xml) => xml.replace(/<(pageMargins|dataValidations)/, `${made}<$1`));
}

const spaces =
  'xmlns:xdr="http://schemas.openxmlformats.org/drawingml/2006/spreadsheetDrawing" xmlns:a="http://schemas.openxmlformats.org/drawingml/2006/main" xmlns:r="http://schemas.openxmlformats.org/officeDocument/2006/relationships"';

/** Something drawn over a sheet, between two corners counted from 0. */
function draw(book: Tampered, sheet: string, column: number, row: number, what: string): Tampered {
  const at = (end: string, more: number) =>
    `<xdr:${end}><xdr:col>${column + more}</xdr:col><xdr:colOff>0</xdr:colOff><xdr:row>${row + more}</xdr:row><xdr:rowOff>0</xdr:rowOff></xdr:${end}>`;
  const xml = `<xdr:wsDr ${spaces}><xdr:twoCellAnchor>${at("from", 0)}${at("to", 2)}${what}<xdr:clientData/></xdr:twoCellAnchor></xdr:wsDr>`;
  const id = attach(book, partOf(book, sheet), "drawing", "xl/drawings/drawing77.xml", xml);
  return book.sheet(sheet, (text) =>
    text.replace("</worksheet>", `<drawing r:id="${id}"/></worksheet>`),
  );
}

const box = (text: string) =>
  `<xdr:sp><xdr:txBody><a:p><a:r><a:t>${text}</a:t></a:r></a:p></xdr:txBody></xdr:sp>`;

/** What is seen on the screen and on paper, without any value changed. */
export const sightCases: readonly Case[] = [
  {
    what: "white text",
    edit: price({ font: '<sz val="10"/><color rgb="FFFFFFFF"/><name val="Arial"/>' }),
    verdict: "found",
    figure: true,
    finds: { code: "look", where: "Letter!B5" },
  },
  {
    what: "text of one point",
    edit: price({ font: '<sz val="1"/><name val="Arial"/>' }),
    verdict: "found",
    figure: true,
    finds: { code: "look", where: "Letter!B5" },
  },
  {
    what: "text struck out",
    edit: price({ font: '<strike/><sz val="10"/><name val="Arial"/>' }),
    verdict: "found",
    figure: true,
    finds: { code: "look", where: "Letter!B5" },
  },
  {
    what: "a typeface of signs",
    edit: price({ font: '<sz val="10"/><name val="Wingdings"/>' }),
    verdict: "found",
    figure: true,
    finds: { code: "look", where: "Letter!B5" },
  },
  {
    what: "another colour that can be read",
    edit: price({ font: '<sz val="10"/><color rgb="FF003366"/><name val="Arial"/>' }),
    verdict: "silent",
    harmless: true,
  },
  {
    what: "a caution of which a part is pale",
    edit: (book) =>
      book.at(
        "Letter",
        "A13",
        () =>
          '<is><r><t>Call before </t></r><r><rPr><color rgb="FFFFFFFF"/></rPr><t>you dig.</t></r></is>',
        "inlineStr",
      ),
    verdict: "found",
    finds: { code: "look", where: "Letter!A13" },
  },
  {
    what: "the row of the price two points high",
    edit: (book) =>
      book.sheet("Letter", (xml) => xml.replace(/<row r="5" ht="[\d.]+"/, '<row r="5" ht="2"')),
    verdict: "found",
    figure: true,
    finds: { code: "look", where: "Letter!5:5" },
  },
  {
    what: "the column of the price half a digit wide",
    edit: (book) =>
      book.sheet("Letter", (xml) =>
        xml.replace(/(<col min="2" max="\d+") width="[\d.]+"/, '$1 width="0.5"'),
      ),
    verdict: "found",
    figure: true,
    finds: { code: "look", where: "Letter!B:B" },
  },
  {
    what: "a column made wider",
    edit: (book) =>
      book.sheet("Letter", (xml) =>
        xml.replace(/(<col min="2" max="\d+") width="[\d.]+"/, '$1 width="15"'),
      ),
    verdict: "silent",
    harmless: true,
  },
  {
    what: "rows of which nothing is said hidden",
    edit: (book) =>
      book.sheet("Letter", (xml) => xml.replace("<sheetFormatPr", '<sheetFormatPr zeroHeight="1"')),
    verdict: "found",
    finds: { code: "look", where: "sheet Letter" },
  },
  {
    what: "a rule that hides the price",
    edit: (book) => rule(book, "Letter", "B5", '<font><color rgb="FFFFFFFF"/></font>'),
    verdict: "found",
    figure: true,
    finds: { code: "look", where: "Letter!B5" },
  },
  {
    what: "a rule that hides a whole sheet",
    edit: (book) =>
      rule(book, "Letter", "A1:XFD1048576", '<numFmt numFmtId="401" formatCode=";;;"/>'),
    verdict: "found",
    figure: true,
    finds: { code: "look", where: anywhere },
  },
  {
    what: "the rule of a warning taken out",
    edit: (book) =>
      book.sheet("Summary", (xml) =>
        xml.replace(/<conditionalFormatting.*<\/conditionalFormatting>/, ""),
      ),
    verdict: "found",
    finds: { code: "look", where: "Summary!A4" },
  },
  {
    what: "a rule that colours a cell",
    edit: (book) =>
      rule(
        book,
        "Price",
        "B23",
        '<fill><patternFill><bgColor rgb="FFFFFF99"/></patternFill></fill>',
      ),
    verdict: "note",
    harmless: true,
    finds: { code: "look", where: "Price!B23" },
  },
  {
    what: "a text box over the price",
    edit: (book) => draw(book, "Letter", 1, 4, box("$3,500")),
    verdict: "found",
    figure: true,
    finds: { code: "drawn", where: "sheet Letter" },
  },
  {
    what: "a picture over a caution",
    edit: (book) => draw(book, "Letter", 0, 12, "<xdr:pic/>"),
    verdict: "found",
    finds: { code: "drawn", where: "sheet Letter" },
  },
  {
    what: "a picture beside the page",
    edit: (book) => draw(book, "Letter", 20, 4, "<xdr:pic/>"),
    verdict: "note",
    harmless: true,
    finds: { code: "drawn", where: "sheet Letter" },
  },
  {
    what: "a picture on a page that is handed out, over nothing",
    edit: (book) => draw(book, "Letter", 4, 4, "<xdr:pic/>"),
    verdict: "found",
    finds: { code: "drawn", where: "sheet Letter", found: "a picture at E5" },
  },
  {
    what: "a photo below what the office is asked, which prints there",
    edit: (book) => draw(book, "Site", 2, 40, "<xdr:pic/>"),
    verdict: "note",
    harmless: true,
    finds: { code: "drawn", where: "sheet Site", found: "a picture at C41" },
  },
  {
    what: "a photo over what the office is asked",
    edit: (book) => draw(book, "Site", 0, 6, "<xdr:pic/>"),
    verdict: "found",
    finds: { code: "drawn", where: "sheet Site" },
  },
  {
    what: "a text box below what the office is asked, which prints there",
    edit: (book) => draw(book, "Runs", 2, 8, box("ok")),
    verdict: "found",
    finds: { code: "drawn", where: "sheet Runs" },
  },
  {
    what: "cells joined over the price",
    edit: (book) =>
      book.sheet("Letter", (xml) =>
        xml.replace("</mergeCells>", '<mergeCell ref="A5:B5"/></mergeCells>'),
      ),
    verdict: "found",
    figure: true,
    finds: { code: "look", where: "Letter!A5:B5" },
  },
  {
    what: "cells joined over a caution",
    edit: (book) =>
      book.sheet("Letter", (xml) =>
        xml.replace(
          '<mergeCell ref="A13:J13"/><mergeCell ref="A14:J14"/>',
          '<mergeCell ref="A13:J14"/>',
        ),
      ),
    verdict: "found",
    alone: true,
    finds: {
      grade: "wrong",
      code: "look",
      where: "Letter!A13:J14",
      found:
        'cells joined over A14, which then show nothing: "Keep children away from open holes."',
    },
  },
  {
    what: "the protection of a sheet taken off",
    edit: (book) => book.sheet("Letter", (xml) => xml.replace(/<sheetProtection[^>]*>/, "")),
    verdict: "note",
    harmless: true,
    finds: { grade: "to know", code: "look", where: "sheet Letter" },
  },
  {
    what: "the sheet for the customer hidden",
    edit: (book) =>
      book.change("xl/workbook.xml", (xml) =>
        xml.replace(/(name="Letter"[^>]*?state=)"visible"/, '$1"veryHidden"'),
      ),
    verdict: "found",
    figure: true,
    finds: { code: "hidden", where: "sheet Letter" },
  },
];
