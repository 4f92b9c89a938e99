import { expect } from "vitest";
import { attach, partOf } from "../../../../support/restyle.js";
import type { Tampered } from "../../../../support/tamper.js";
import type { Case } from "../run.js";

const many = (count: number, piece: (at: number) => string): string =>
  Array.from({ length: count }, (_, at) => piece(at)).join("");

/** Two rules: one that colours, one that hides. */
function looks(book: Tampered): [colours: number, hides: number] {
  const first = book.text("xl/styles.xml").match(/<dxf>/g)?.length ?? 0;
  book.change("xl/styles.xml", (xml) =>
    xml.replace(
      "</dxfs>",
      '<dxf><fill><patternFill><bgColor rgb="FFFFFF99"/></patternFill></fill></dxf><dxf><font><color rgb="FFFFFFFF"/></font></dxf></dxfs>',
    ),
  );
  return [first, first + 1];
}

const rule = (areas: string, look: number, formula: string) =>
  `<conditionalFormatting sqref="${areas}"><cfRule type="expression" dxfId="${look}" priority="9"><formula>${formula}</formula></cfRule></conditionalFormatting>`;

const rules = (made: (colours: number, hides: number) => string) => (book: Tampered) => {
  const xml = made(...looks(book));
  return book.sheet("Letter", (text) =>
    text.replace(/<(pageMargins|dataValidations)/, `${xml}<$1`),
  );
};

const spaces =
  'xmlns:xdr="http://schemas.openxmlformats.org/drawingml/2006/spreadsheetDrawing" xmlns:a="http://schemas.openxmlformats.org/drawingml/2006/main"';

/** Pictures beside the page, then a box over the price. */
function pictures(book: Tampered): Tampered {
  const anchor = (column: number, what: string) => {
    const corner = (end: string, more: number) =>
      `<xdr:${end}><xdr:col>${column + more}</xdr:col><xdr:colOff>0</xdr:colOff><xdr:row>${4 + more}</xdr:row><xdr:rowOff>0</xdr:rowOff></xdr:${end}>`;
    return `<xdr:twoCellAnchor>${corner("from", 0)}${corner("to", 1)}${what}<xdr:clientData/></xdr:twoCellAnchor>`;
  };
  const xml = `<xdr:wsDr ${spaces}>${many(500, () => anchor(40, "<xdr:pic/>"))}${anchor(1, "<xdr:sp/>")}</xdr:wsDr>`;
  const id = attach(book, partOf(book, "Letter"), "drawing", "xl/drawings/drawing77.xml", xml);
  return book.sheet("Letter", (text) =>
    text.replace("</worksheet>", `<drawing r:id="${id}"/></worksheet>`),
  );
}

/** What hides among so many harmless things that nobody looks through them. */
export const crowdCases: readonly Case[] = [
  {
    what: "a rule that hides the price, after fifty that colour",
    edit: rules(
      (colours, hides) =>
        many(50, (at) => rule("B5", colours, `${at}=1`)) + rule("B5", hides, "1=1"),
    ),
    verdict: "found",
    figure: true,
    finds: { grade: "doubtful", code: "look", where: "Letter!B5" },
  },
  {
    what: "a rule that hides the price, last of a list of four thousand areas",
    edit: rules((_, hides) => rule(`${many(4000, (at) => `ZZ${at + 100} `)}B5`, hides, "1=1")),
    verdict: "found",
    figure: true,
    finds: {
      code: "look",
      where: "sheet Letter",
      found: expect.stringContaining("more cells than are looked at"),
    },
  },
  {
    what: "a rule that hides the price, after more areas than are looked at",
    edit: rules(
      (colours, hides) =>
        many(1500, (at) =>
          rule(
            many(40, (column) => `A${column + 1}:ZZ9999 `),
            colours,
            `${at}=1`,
          ),
        ) + rule("B5", hides, "1=1"),
    ),
    verdict: "found",
    figure: true,
    finds: {
      code: "look",
      where: "sheet Letter",
      found: expect.stringContaining("more cells than are looked at"),
    },
  },
  {
    what: "a box over the price, after five hundred pictures beside the page",
    edit: pictures,
    verdict: "found",
    figure: true,
    finds: { code: "carried", where: "sheet Letter" },
  },
  {
    what: "cells joined over the price, after nineteen thousand joined beside the page",
    edit: (book) =>
      book.sheet("Letter", (xml) =>
        xml.replace(
          "</mergeCells>",
          `${many(19_500, (at) => `<mergeCell ref="AA${at + 1}:AB${at + 1}"/>`)}<mergeCell ref="A5:B5"/></mergeCells>`,
        ),
      ),
    verdict: "found",
    figure: true,
    finds: { code: "look", where: "Letter!A5:B5" },
  },
  {
    what: "another hint for an input, after more rules than are looked at",
    edit: (book) =>
      book.sheet("Site", (xml) =>
        xml.replace(
          /<dataValidations[^>]*>/,
          (head) =>
            `${head}<dataValidation type="custom" sqref="${many(4000, (at) => `ZZ${at + 100} `)}"><formula1>1</formula1></dataValidation>`,
        ),
      ),
    verdict: "found",
    finds: {
      code: "look",
      where: "sheet Site",
      found: expect.stringContaining("more cells than are looked at"),
    },
  },
];
