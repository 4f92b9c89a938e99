import { expect } from "vitest";
import { attach } from "../../../../support/restyle.js";
import type { Tampered } from "../../../../support/tamper.js";
import type { Case } from "../run.js";

const set = (book: Tampered, element: string, attribute: string) =>
  book.sheet("Letter", (xml) => xml.replace(`<${element} `, `<${element} ${attribute} `));
const calculation = (book: Tampered, attribute: string) =>
  book.change("xl/workbook.xml", (xml) => xml.replace("<calcPr", `<calcPr ${attribute}`));
const carries = (kind: string, name: string) => (book: Tampered) =>
  attach(book, "xl/workbook.xml", kind, name, "<x/>");
const names = (from: string | RegExp, to: string) => (book: Tampered) =>
  book.change("xl/workbook.xml", (xml) => xml.replace(from, to));
/** The letter's print area from one row to another. */
const area = (first: number, last: number) =>
  names(/('Letter'!\$A\$)1(:\$J\$)14/, `$1${first}$2${last}`);

/** The page, the calculation, and what a program runs or fetches. */
export const pageCases: readonly Case[] = [
  {
    what: "a print area that leaves out the caution",
    edit: area(1, 11),
    verdict: "found",
    finds: { code: "look", where: "sheet Letter" },
  },
  {
    what: "a print area that leaves out the price",
    edit: area(6, 14),
    verdict: "found",
    figure: true,
    finds: { code: "look", where: "sheet Letter" },
  },
  {
    what: "a second print area without the price before the first, as LibreOffice writes one that is set anew",
    edit: names(
      /<definedName name="_xlnm.Print_Area"([^>]*)>('Letter'!\$A\$)1(:\$J\$14)/,
      '<definedName name="_xlnm.Print_Area"$1>$26$3</definedName>$&',
    ),
    verdict: "found",
    figure: true,
    finds: { code: "look", where: "sheet Letter" },
  },
  {
    what: "a print area with a few blank lines more",
    edit: area(1, 18),
    verdict: "silent",
    harmless: true,
  },
  {
    what: "a head put on the page",
    edit: (book) =>
      book.sheet("Letter", (xml) =>
        xml.replace("<oddFooter>", "<oddHeader>&amp;CPrice: $3,500</oddHeader><oddFooter>"),
      ),
    verdict: "found",
    figure: true,
    finds: { code: "look", where: "sheet Letter, head of the page" },
  },
  {
    what: "the foot of the page reworded",
    edit: (book) => book.sheet("Letter", (xml) => xml.replace("Job F-1", "Job F-1, net of tax")),
    verdict: "found",
    finds: { code: "look", where: "sheet Letter, foot of the page" },
  },
  {
    what: "another foot on the first page",
    edit: (book) =>
      book.sheet("Letter", (xml) =>
        xml
          .replace("<headerFooter>", '<headerFooter differentFirst="1">')
          .replace("</headerFooter>", "<firstFooter>less 10 %</firstFooter></headerFooter>"),
      ),
    verdict: "found",
    figure: true,
    finds: { code: "look", where: "sheet Letter, foot of the page" },
  },
  {
    what: "a foot in another size of type",
    edit: (book) => book.sheet("Letter", (xml) => xml.replace("&amp;8Job", "&amp;9Job")),
    verdict: "silent",
    harmless: true,
  },
  {
    what: "zeros not shown",
    edit: (book) => set(book, "sheetView", 'showZeros="0"'),
    verdict: "found",
    figure: true,
    finds: { code: "look", where: "sheet Letter" },
  },
  {
    what: "printed at a tenth of its size",
    edit: (book) => book.sheet("Letter", (xml) => xml.replace(/scale="\d+"/, 'scale="10"')),
    verdict: "found",
    finds: { code: "look", where: "sheet Letter" },
  },
  {
    what: "errors left out on paper",
    edit: (book) => set(book, "pageSetup", 'errors="blank"'),
    verdict: "found",
    figure: true,
    finds: { code: "look", where: "sheet Letter" },
  },
  {
    what: "lines printed again on each page",
    edit: names(
      "<definedNames>",
      '<definedNames><definedName name="_xlnm.Print_Titles" localSheetId="4">Letter!$14:$14</definedName>',
    ),
    verdict: "found",
    finds: { code: "look", where: "sheet Letter" },
  },
  {
    what: "dates counted from 1904",
    edit: (book) =>
      book.change("xl/workbook.xml", (xml) =>
        xml.replace("<workbookPr", '<workbookPr date1904="1"'),
      ),
    verdict: "found",
    figure: true,
    finds: { code: "calculation", grade: "wrong" },
  },
  {
    what: "figures cut to what is shown",
    edit: (book) => calculation(book, 'fullPrecision="0"'),
    verdict: "found",
    figure: true,
    finds: { code: "calculation", grade: "wrong" },
  },
  {
    what: "calculation by hand",
    edit: (book) => calculation(book, 'calcMode="manual"'),
    verdict: "found",
    figure: true,
    finds: { code: "calculation", grade: "doubtful" },
  },
  {
    what: "circles calculated round and round, as Gnumeric sets it",
    edit: (book) => calculation(book, 'iterate="1"'),
    verdict: "note",
    harmless: true,
    finds: { code: "calculation", grade: "to know" },
  },
  {
    what: "charts and pictures not shown",
    edit: (book) =>
      book.change("xl/workbook.xml", (xml) =>
        xml.replace("<workbookPr", '<workbookPr showObjects="none"'),
      ),
    verdict: "found",
    finds: { code: "calculation" },
  },
  {
    what: "macros",
    edit: carries("vbaProject", "xl/vbaProject.bin"),
    verdict: "found",
    finds: { code: "carried", found: "macros" },
  },
  {
    what: "connections to data outside",
    edit: carries("connections", "xl/connections.xml"),
    verdict: "found",
    finds: { code: "carried", found: "connections to data outside" },
  },
  {
    what: "a link to another workbook",
    edit: carries("externalLink", "xl/externalLinks/externalLink1.xml"),
    verdict: "found",
    finds: { code: "carried", found: "links to other workbooks" },
  },
  {
    what: "buttons of its own",
    edit: carries("extensibility", "customUI/customUI.xml"),
    verdict: "found",
    finds: { code: "carried", found: "buttons and menus of its own" },
  },
  {
    what: "a sheet of macros of the old kind",
    edit: carries("xlMacrosheet", "xl/macrosheets/sheet1.xml"),
    verdict: "found",
    finds: { code: "carried", found: expect.stringContaining("macros") },
  },
  {
    what: "a picture behind the cells",
    edit: (book) =>
      book.sheet("Letter", (xml) =>
        xml.replace("</worksheet>", '<picture r:id="rId9"/></worksheet>'),
      ),
    verdict: "found",
    finds: { code: "carried", found: "a picture behind the cells" },
  },
  {
    what: "conditional formats of a newer kind, in an extension",
    edit: (book) =>
      book.sheet("Letter", (xml) =>
        xml.replace(
          "</worksheet>",
          '<extLst><ext uri="{78C0D931-6437-407d-A8EE-F0AAD7539E65}"/></extLst></worksheet>',
        ),
      ),
    verdict: "found",
    figure: true,
    finds: { code: "carried", found: "conditional formats of a newer kind" },
  },
  {
    what: "settings of a printer",
    edit: carries("printerSettings", "xl/printerSettings/printerSettings1.bin"),
    verdict: "silent",
    harmless: true,
  },
];
