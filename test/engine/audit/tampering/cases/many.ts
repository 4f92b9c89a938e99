import { expect } from "vitest";
import type { Tampered } from "../../../../support/tamper.js";
import type { Case } from "../run.js";

/** Puts sheets of its own into the workbook. */
function sheets(book: Tampered, count: number): void {
  const at = Array.from({ length: count }, (_, i) => i + 1);
  const each = (text: (i: number) => string) => at.map(text).join("");
  book.change("xl/workbook.xml", (xml) =>
    xml.replace(
      "</sheets>",
      `${each((i) => `<sheet name="Side ${i}" sheetId="${500 + i}" r:id="rIdSide${i}"/>`)}</sheets>`,
    ),
  );
  book.change("xl/_rels/workbook.xml.rels", (xml) =>
    xml.replace(
      "</Relationships>",
      `${each(
        (i) =>
          `<Relationship Id="rIdSide${i}" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/worksheet" Target="worksheets/side${i}.xml"/>`,
      )}</Relationships>`,
    ),
  );
  book.change("[Content_Types].xml", (xml) =>
    xml.replace(
      "</Types>",
      `${each(
        (i) =>
          `<Override PartName="/xl/worksheets/side${i}.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.worksheet+xml"/>`,
      )}</Types>`,
    ),
  );
  for (const i of at) {
    book.put(
      `xl/worksheets/side${i}.xml`,
      '<worksheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><sheetData/></worksheet>',
    );
  }
}

/** What is there many times is told once. */
export const manyCases: readonly Case[] = [
  {
    what: "two sheets of its own",
    edit: (book) => sheets(book, 2),
    verdict: "found",
    finds: { code: "sheet-extra", where: "sheet Side 2" },
  },
  {
    what: "ninety sheets of its own",
    edit: (book) => sheets(book, 90),
    verdict: "found",
    finds: {
      code: "sheet-extra",
      where: expect.stringMatching(/^90 sheets: sheet Side 1, .* and 78 more$/),
    },
  },
  {
    what: "forty names of its own",
    edit: (book) =>
      book.change("xl/workbook.xml", (xml) =>
        xml.replace(
          "<definedNames>",
          `<definedNames>${Array.from({ length: 40 }, (_, i) => `<definedName name="fudge_${i}">0.9</definedName>`).join("")}`,
        ),
      ),
    verdict: "found",
    finds: { code: "name-extra", where: expect.stringMatching(/^40 names: name fudge_0, /) },
  },
  {
    what: "an input typed in by a library, and nothing recalculated",
    edit: (book) => book.cell("runs.run[1]", () => "<v>51.7</v>"),
    verdict: "found",
    figure: true,
    finds: {
      code: "value-stale",
      where: expect.stringMatching(/^\d+ cells on 5 sheets: /),
      found: expect.stringMatching(
        /^the workbook was not recalculated .* \(price\) shows \$4,087\.02$/,
      ),
      expected: expect.stringMatching(/^\$3,831\.41, which follows/),
      advice: expect.stringMatching(/Ctrl\+Shift\+F9/),
    },
  },
];
