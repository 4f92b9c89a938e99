import ExcelJS from "exceljs";
import { describe, expect, test } from "vitest";
import { readWorkbook } from "../../../../engine/workbook/read/read.js";
import { altered, main, office, oneRow, parts, rows, workbook, zipped } from "./build.js";

const valuesOf = (bytes: Uint8Array) =>
  Object.fromEntries(
    [...(readWorkbook(bytes).sheets[0]?.cells ?? [])].map(([at, { value }]) => [at, value]),
  );

describe("values", () => {
  const strings = `<si><t>plain</t></si>
    <si><r><rPr><b/></rPr><t xml:space="preserve">bold </t></r><r><t>then</t></r><rPh sb="0" eb="1"><t>spoken</t></rPh><phoneticPr fontId="1"/></si>
    <si><t>a_x000D_b_x005F_x000D_</t></si><si><t>  outer  </t></si><si><t xml:space="preserve">  outer  </t></si><si><t/></si>`;
  test.each([
    ["number", "<c><v>12.5</v></c>", 12.5],
    ["number with exponent", '<c t="n"><v> -1.5E-3 </v></c>', -0.0015],
    ["nothing", '<c s="4"/>', undefined],
    ["empty value", "<c><v></v></c>", undefined],
    ["shared text", '<c t="s"><v>0</v></c>', "plain"],
    ["rich text without its phonetic text", '<c t="s"><v>1</v></c>', "bold then"],
    ["escapes", '<c t="s"><v>2</v></c>', "a\rb_x000D_"],
    ["outer space not preserved", '<c t="s"><v>3</v></c>', "outer"],
    ["outer space preserved", '<c t="s"><v>4</v></c>', "  outer  "],
    ["empty text", '<c t="s"><v>5</v></c>', ""],
    ["inline text", '<c t="inlineStr"><is><t>in &amp; line</t></is></c>', "in & line"],
    ["inline runs", '<c t="inlineStr"><is><r><t>a</t></r><r><t>b</t></r></is></c>', "ab"],
    ["text result", '<c t="str"><f>A1</f><v>yes </v></c>', "yes "],
    ["empty text result", '<c t="str"><f>A1</f><v></v></c>', ""],
    ["cdata", "<c><v><![CDATA[7]]></v></c>", 7],
    ["boolean 1", '<c t="b"><v>1</v></c>', true],
    ["boolean 0", '<c t="b"><v>0</v></c>', false],
    ["boolean true", '<c t="b"><v>true</v></c>', true],
    ["boolean FALSE", '<c t="b"><v>FALSE</v></c>', false],
    ["error", '<c t="e"><f>1/0</f><v>#DIV/0!</v></c>', { error: "#DIV/0!" }],
    ["date as serial number", '<c s="2"><v>45292</v></c>', 45292],
    ["ISO date", '<c t="d"><v>2024-01-01</v></c>', 45292],
    ["ISO date and time", '<c t="d"><v>2024-01-01T06:00:00</v></c>', 45292.25],
    ["no cached result", "<c><f>1+1</f></c>", null],
  ])("%s", (_, cell, value) => {
    expect(valuesOf(oneRow(cell, { strings }))).toEqual(value === undefined ? {} : { A1: value });
  });

  test("positions are implied where they are not written", () => {
    const bytes = workbook({
      sheets: {
        Pump: `<sheetData><row><c><v>1</v></c><c r="D1"><v>2</v></c><c><v>3</v></c></row><row/><row><c><v>4</v></c></row><row r="9"><c r="b9"><v>5</v></c></row></sheetData>`,
      },
    });
    expect(valuesOf(bytes)).toEqual({ A1: 1, D1: 2, E1: 3, A3: 4, B9: 5 });
  });

  test("the last cell of a sheet", () => {
    const row = '<sheetData><row r="1048576"><c r="XFD1048576"><v>1</v></c></row></sheetData>';
    expect(valuesOf(workbook({ sheets: { Pump: row } }))).toEqual({ XFD1048576: 1 });
  });

  test("dates from 1904 are told, and ISO dates counted from there", () => {
    const content = readWorkbook(
      oneRow('<c t="d"><v>1904-01-02</v></c>', {
        workbookProperties: '<workbookPr date1904="1"/>',
      }),
    );
    expect(content.date1904).toBe(true);
    expect(content.sheets[0]?.cells.get("A1")?.value).toBe(1);
  });
});

describe("formulas", () => {
  const formulasOf = (bytes: Uint8Array) =>
    Object.fromEntries(
      [...(readWorkbook(bytes).sheets[0]?.cells ?? [])].map(([at, { formula }]) => [at, formula]),
    );

  test("shared formulas are written out, also before their text and with text of their own", () => {
    const bytes = workbook({
      sheets: {
        Pump: rows(
          '<c><f t="shared" si="0"/><v>1</v></c>',
          '<c><f t="shared" si="0" ref="A1:A3">B2*$C$1+LOG10(B1)</f><v>1</v></c><c><f t="shared" si="0"/><v>2</v></c>',
          '<c><f t="shared" si="0">SUM(B3)</f><v>1</v></c>',
        ),
      },
    });
    expect(formulasOf(bytes)).toEqual({
      A1: "B1*$C$1+LOG10(#REF!)",
      A2: "B2*$C$1+LOG10(B1)",
      B2: "C2*$C$1+LOG10(C1)",
      A3: "SUM(B3)",
    });
  });

  test("array formulas and data tables are marked", () => {
    const cells = readWorkbook(
      oneRow(
        '<c><f t="array" ref="A1:A3">ROW(1:3)</f><v>1</v></c><c><f t="dataTable" ref="B1:B3" r1="C1"/><v>2</v></c>',
      ),
    ).sheets[0]?.cells;
    expect(cells?.get("A1")).toEqual({ value: 1, formula: "ROW(1:3)", array: "A1:A3" });
    expect(cells?.get("B1")).toEqual({ value: 2, formula: "TABLE(C1,)" });
  });
});

describe("the workbook", () => {
  const plan = {
    sheets: {
      Falls: `<cols><col min="3" max="5" hidden="1"/></cols><sheetData><row r="1" hidden="1"><c><v>1</v></c></row><row r="2" hidden="true"/></sheetData>`,
      "Bob's list": rows(),
    },
    states: { "Bob's list": 'state="veryHidden"' },
    names: `<definedName name="total_flow">Falls!$B$2</definedName>
      <definedName name="falls.flow" hidden="1">'Bob''s list'!$C$15:$C$4</definedName>
      <definedName name="total_flow" localSheetId="1">Falls!$B$3</definedName>
      <definedName name="rate">0.07</definedName><definedName name="moving">Falls!B2</definedName>
      <definedName name="gone">Falls!#REF!</definedName><definedName name="other">[1]Falls!$A$1</definedName>
      <definedName name="all">Falls!$A$1:$A$1048576</definedName><definedName name="nowhere">Old!$A$1</definedName>`,
    core: "<dc:creator>office</dc:creator><cp:lastModifiedBy>site</cp:lastModifiedBy><dcterms:created>2024-01-02T03:04:05Z</dcterms:created>",
    custom: `<property fmtid="{0}" pid="2" name="template"><vt:lpwstr>waterfall &lt;1&gt;</vt:lpwstr></property><property fmtid="{0}" pid="3" name="count"><vt:i4>3</vt:i4></property>`,
  };
  const content = readWorkbook(workbook(plan));

  test("sheets", () => {
    expect(content.sheets.map(({ cells, validated, ...sheet }) => sheet)).toEqual([
      { name: "Falls", state: "visible", read: true, hiddenRows: 2, hiddenColumns: 3 },
      { name: "Bob's list", state: "veryHidden", read: true, hiddenRows: 0, hiddenColumns: 0 },
    ]);
  });

  test("names", () => {
    const from = { row: 2, column: 2 };
    expect(content.names.slice(0, 3)).toEqual([
      {
        name: "total_flow",
        text: "Falls!$B$2",
        target: { sheet: "Falls", from, to: from },
        scope: undefined,
        hidden: false,
      },
      {
        name: "falls.flow",
        text: "'Bob''s list'!$C$15:$C$4",
        target: { sheet: "Bob's list", from: { row: 4, column: 3 }, to: { row: 15, column: 3 } },
        scope: undefined,
        hidden: true,
      },
      {
        name: "total_flow",
        text: "Falls!$B$3",
        target: { sheet: "Falls", from: { row: 3, column: 2 }, to: { row: 3, column: 2 } },
        scope: "Bob's list",
        hidden: false,
      },
    ]);
    expect(content.names.slice(3).map(({ target }) => target)).toEqual(Array(6).fill(undefined));
  });

  test("properties", () => {
    expect(content.properties).toEqual({
      creator: "office",
      lastModifiedBy: "site",
      created: "2024-01-02T03:04:05Z",
      custom: new Map([
        ["template", "waterfall <1>"],
        ["count", "3"],
      ]),
    });
  });

  test("only the sheets asked for are read", () => {
    const some = readWorkbook(workbook(plan), { sheets: ({ state }) => state !== "visible" });
    expect(some.sheets.map(({ read, cells }) => [read, cells.size])).toEqual([
      [false, 0],
      [true, 0],
    ]);
  });

  test("a broken sheet that is not asked for does no harm", () => {
    const bytes = altered({ "xl/worksheets/sheet1.xml": "<broken" }, plan);
    expect(() => readWorkbook(bytes)).toThrow("not well-formed");
    expect(readWorkbook(bytes, { sheets: ({ name }) => name !== "Falls" }).sheets).toHaveLength(2);
  });
});

describe("spellings of the format", () => {
  test("a print area of one cell that LibreOffice wrote twice counts once", () => {
    const named = (text: string) =>
      `<definedName name="_xlnm.Print_Area" localSheetId="0">${text}</definedName>`;
    const { names } = readWorkbook(
      workbook({ names: named("Pump!$O$1") + named("Pump!$O$1:$O$1") }),
    );
    expect(names.map(({ text }) => text)).toEqual(["Pump!$O$1"]);
  });

  test("a print area that was set anew in LibreOffice, which writes the old one after it: both are read", () => {
    const named = (text: string) =>
      `<definedName name="_xlnm.Print_Area" localSheetId="0">${text}</definedName>`;
    const written = named("Pump!$A$1:$B$9") + named("Pump!$A$1:$B$40");
    const { names } = readWorkbook(workbook({ names: written }));
    expect(names.map(({ text }) => text)).toEqual(["Pump!$A$1:$B$9", "Pump!$A$1:$B$40"]);
  });

  test("strict namespaces", () => {
    const strict = Object.fromEntries(
      Object.entries(parts()).map(([name, text]) => [
        name,
        String(text)
          .replaceAll(main, "http://purl.oclc.org/ooxml/spreadsheetml/main")
          .replaceAll(office, "http://purl.oclc.org/ooxml/officeDocument/relationships"),
      ]),
    );
    expect(valuesOf(zipped(strict))).toEqual({ A1: 1 });
  });

  test("prefixes, comments, foreign elements and alternate content", () => {
    const sheet = `<x:worksheet xmlns:x="${main}" xmlns:mc="http://schemas.openxmlformats.org/markup-compatibility/2006" xmlns:q="urn:q"><mc:AlternateContent><mc:Choice Requires="q"><x:sheetData><x:row><x:c><x:v>9</x:v></x:c></x:row></x:sheetData></mc:Choice></mc:AlternateContent><x:sheetData><x:row r="1"><q:c><x:v>9</x:v></q:c><x:c q:r="Z9"><x:v>1<!-- not -->2</x:v></x:c></x:row></x:sheetData></x:worksheet>`;
    expect(valuesOf(altered({ "xl/worksheets/sheet1.xml": sheet }))).toEqual({ A1: 12 });
  });

  test("UTF-16", () => {
    const text = String(parts()["xl/worksheets/sheet1.xml"]).replace("UTF-8", "UTF-16");
    const bytes = new Uint8Array(Buffer.from(`\ufeff${text}`, "utf16le"));
    expect(valuesOf(altered({ "xl/worksheets/sheet1.xml": bytes }))).toEqual({ A1: 1 });
  });

  test("part names in another case, and stored without packing", () => {
    const { "xl/worksheets/sheet1.xml": sheet = "", ...rest } = parts();
    expect(valuesOf(zipped({ ...rest, "XL/Worksheets/Sheet1.xml": sheet }, 0))).toEqual({ A1: 1 });
  });
});

test("a file written by exceljs comes back", async () => {
  const made = new ExcelJS.Workbook();
  made.creator = "office";
  const sheet = made.addWorksheet("Water course", { state: "hidden" });
  sheet.getCell("B2").value = 12.5;
  sheet.getCell("B3").value = " = not a formula & <more>\n";
  sheet.getCell("B4").value = { formula: 'IF(B2>1,"a","b")', result: "a" };
  sheet.getCell("B5").value = true;
  sheet.getCell("B6").value = { error: "#N/A" };
  sheet.getCell("B7").value = {
    richText: [{ text: "one " }, { text: "two", font: { bold: true } }],
  };
  sheet.getRow(9).hidden = true;
  made.definedNames.add("'Water course'!$B$2", "flow");
  const content = readWorkbook(new Uint8Array(await made.xlsx.writeBuffer()));
  const read = content.sheets[0];
  expect(read).toMatchObject({ name: "Water course", state: "hidden" });
  expect(Object.fromEntries(read?.cells ?? [])).toEqual({
    B2: { value: 12.5 },
    B3: { value: " = not a formula & <more>\n" },
    B4: { value: "a", formula: 'IF(B2>1,"a","b")' },
    B5: { value: true },
    B6: { value: { error: "#N/A" } },
    B7: { value: "one two" },
  });
  expect(content.names[0]?.target).toMatchObject({
    sheet: "Water course",
    from: { row: 2, column: 2 },
  });
  expect(content.properties.creator).toBe("office");
});

test("1,500 formulas are read", () => {
  const cells = Array.from({ length: 150 }, (_, row) =>
    Array.from(
      { length: 10 },
      (_, at) => `<c><f>lift+A${row + 1}*${at}</f><v>${row * at}</v></c>`,
    ).join(""),
  );
  const bytes = workbook({ sheets: { Pump: rows(...cells) } });
  expect(readWorkbook(bytes).sheets[0]?.cells.size).toBe(1500);
});
