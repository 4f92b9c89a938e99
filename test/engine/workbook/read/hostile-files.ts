import { altered, oneRow, type Parts, parts, rows, workbook, zipped } from "./build.js";

/** A file that must be refused: its name, how it is made, the code, and a piece of the sentence. */
export type Hostile = readonly [name: string, make: () => Uint8Array, code: string, says: string];

const sheet = "xl/worksheets/sheet1.xml";
const text = (from: string) => new Uint8Array(Buffer.from(from));
const ole = (inside: string) =>
  new Uint8Array(
    Buffer.concat([
      Buffer.from([0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1]),
      Buffer.alloc(600),
      Buffer.from(inside, "utf16le"),
    ]),
  );

function without(part: string): Uint8Array {
  const { [part]: _, ...rest } = parts();
  return zipped(rest);
}

/** Sixty megabytes of nothing, packed once. */
const bomb = (): Uint8Array => {
  packedBomb ??= altered({ [sheet]: new Uint8Array(60e6) });
  return packedBomb;
};
let packedBomb: Uint8Array | undefined;

/** Packed without numbers that repeat, so that the ratio alone does not give it away. */
function manyRows(count: number): string {
  let inside = "";
  for (let row = 1; row <= count; row++) {
    inside += `<row r="${row}"><c r="A${row}"><v>${(row * 7919) % 1000003}</v></c></row>`;
  }
  return `<sheetData>${inside}</sheetData>`;
}

/** Overwrites a number in the directory of a workbook, for the entry whose name ends so. */
function forged(from: Uint8Array, name: string, field: number, value: number): Uint8Array {
  const bytes = Buffer.from(from);
  const at = bytes.lastIndexOf(name);
  const start = bytes.lastIndexOf(Buffer.from([0x50, 0x4b, 1, 2]), at);
  bytes.writeUInt32LE(value, start + field);
  return new Uint8Array(bytes);
}
const [crcField, packedField, unpackedField, placeField] = [16, 20, 24, 42] as const;

const entity = (body: string) =>
  `<!DOCTYPE worksheet [${body}]><worksheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><sheetData/></worksheet>`;

export const hostile: readonly Hostile[] = [
  // Not a workbook at all.
  ["an empty file", () => new Uint8Array(), "workbook-kind", "empty"],
  ["an old .xls", () => ole("Workbook"), "workbook-kind", "old .xls workbook"],
  ["a locked workbook", () => ole("EncryptedPackage"), "workbook-encrypted", "password"],
  ["CSV", () => text("item,price\npump,700\n"), "workbook-kind", "plain text"],
  ["HTML", () => text(" <html><table>"), "workbook-kind", "web page"],
  ["a PDF", () => text("%PDF-1.7"), "workbook-kind", "PDF"],
  ["an image", () => new Uint8Array([0x89, 0x50, 0, 0]), "workbook-kind", "not an .xlsx"],
  ["any zip", () => zipped({ "a.txt": "hello" }), "workbook-kind", "zip archive"],
  [
    "a text document",
    () =>
      altered({
        "[Content_Types].xml": String(parts()["[Content_Types].xml"]).replace(
          "spreadsheetml.sheet.main",
          "wordprocessingml.document.main",
        ),
      }),
    "workbook-kind",
    "not an .xlsx",
  ],
  // Zip.
  ["cut off", () => workbook().slice(0, 700), "workbook-damaged", "cut off"],
  ["only a zip's first bytes", () => text("PK\u0003\u0004"), "workbook-damaged", "cut off"],
  ["a bomb, honest about its size", bomb, "workbook-size", "unpacked bytes in one part"],
  [
    "a bomb within the size of a part",
    () => altered({ [sheet]: new Uint8Array(7e6) }),
    "workbook-size",
    "ratio",
  ],
  [
    "a bomb that states a small size",
    () => forged(bomb(), sheet, unpackedField, 2000),
    "workbook-damaged",
    "false size",
  ],
  [
    "a bomb that states a believable size",
    () => forged(bomb(), sheet, unpackedField, 7e6),
    "workbook-damaged",
    "holds more than the 7000000 bytes",
  ],
  [
    "a size too large",
    () => forged(workbook(), sheet, unpackedField, 900),
    "workbook-damaged",
    "where 900 are stated",
  ],
  [
    "a wrong checksum",
    () => forged(workbook(), sheet, crcField, 1),
    "workbook-damaged",
    "checksum",
  ],
  [
    "packed bytes beyond the file",
    () => forged(workbook(), sheet, packedField, 1e9),
    "workbook-damaged",
    "cut off",
  ],
  [
    "a part beyond the file",
    () => forged(workbook(), sheet, placeField, 1e9),
    "workbook-damaged",
    "not where",
  ],
  [
    "two entries on the same bytes",
    () => forged(workbook(), sheet, placeField, 0),
    "workbook-damaged",
    "another name",
  ],
  [
    "thousands of entries",
    () => altered(Object.fromEntries(Array.from({ length: 3000 }, (_, at) => [`x/${at}.xml`, ""]))),
    "workbook-size",
    "files inside",
  ],
  ["a path upwards", () => altered({ "../../x": "1" }), "workbook-unsafe", "../../x"],
  ["an absolute path", () => altered({ "/etc/x": "1" }), "workbook-unsafe", "/etc/x"],
  ["a backslash path", () => altered({ "xl\\x.xml": "1" }), "workbook-unsafe", "xl"],
  [
    "one part twice, in two cases",
    () => altered({ "XL/workbook.xml": "1" }),
    "workbook-unsafe",
    "two parts",
  ],
  // Package.
  ["no content types", () => without("[Content_Types].xml"), "workbook-kind", "not an .xlsx"],
  ["no relationships", () => without("_rels/.rels"), "workbook-kind", "not an .xlsx"],
  ["no workbook part", () => without("xl/workbook.xml"), "workbook-damaged", "is missing"],
  ["no sheet part", () => without(sheet), "workbook-damaged", "no part inside"],
  ["no sheets", () => workbook({ sheets: {} }), "workbook-damaged", "no sheets"],
  [
    "a sheet outside the workbook",
    () =>
      altered({
        "xl/_rels/workbook.xml.rels": String(parts()["xl/_rels/workbook.xml.rels"]).replace(
          'Target="worksheets',
          'TargetMode="External" Target="http://example.invalid',
        ),
      }),
    "workbook-damaged",
    "no part inside",
  ],
  [
    "a relationship up and out",
    () =>
      altered({
        "xl/_rels/workbook.xml.rels": String(parts()["xl/_rels/workbook.xml.rels"]).replace(
          "worksheets/",
          "../../../",
        ),
      }),
    "workbook-damaged",
    "outside itself",
  ],
  // XML.
  ["not XML", () => altered({ [sheet]: "hello" }), "workbook-damaged", "not well-formed"],
  ["XML cut off", () => altered({ [sheet]: "<worksheet" }), "workbook-damaged", "not well-formed"],
  ["not UTF-8", () => altered({ [sheet]: text("<a>").fill(0xff, 2) }), "workbook-damaged", "utf-8"],
  ["another root", () => altered({ [sheet]: "<html/>" }), "workbook-damaged", "<html>"],
  [
    "an outside entity",
    () => altered({ [sheet]: entity('<!ENTITY e SYSTEM "file:///etc/hostname">') }),
    "workbook-unsafe",
    "document type",
  ],
  [
    "entities within entities",
    () => altered({ [sheet]: entity('<!ENTITY a "aaaa"><!ENTITY b "&a;&a;&a;&a;">') }),
    "workbook-unsafe",
    "document type",
  ],
  [
    "an undeclared entity",
    () => oneRow("<c><v>&nbsp;</v></c>"),
    "workbook-damaged",
    "not well-formed",
  ],
  [
    "very deep nesting",
    () => workbook({ sheets: { Pump: "<x>".repeat(50000) } }),
    "workbook-unsafe",
    "nested",
  ],
  [
    "one element with endless attributes",
    () =>
      workbook({
        sheets: { Pump: `<x ${Array.from({ length: 300e3 }, (_, at) => `a${at}=""`).join(" ")}/>` },
      }),
    "workbook-unsafe",
    "attributes",
  ],
  [
    "endless empty elements",
    () =>
      workbook({
        sheets: { Pump: Array.from({ length: 900e3 }, (_, at) => `<x${at % 9973}/>`).join("") },
      }),
    "workbook-size",
    "",
  ],
  // Sheets.
  [
    "a million rows",
    () => zipped(parts({ sheets: { Pump: manyRows(1e6) } }), 1),
    "workbook-size",
    "bytes",
  ],
  [
    "rows within the size of a part",
    () => workbook({ sheets: { Pump: manyRows(140e3) } }),
    "workbook-size",
    "filled cells",
  ],
  [
    "shared texts without end",
    () => oneRow("", { strings: "<si><t>a</t></si>".repeat(200e3) }),
    "workbook-size",
    "",
  ],
  [
    "names without end",
    () =>
      workbook({
        names: Array.from(
          { length: 30e3 },
          (_, at) => `<definedName name="n${(at * 7919) % 30011}">Pump!$A$1</definedName>`,
        ).join(""),
      }),
    "workbook-size",
    "defined names",
  ],
  [
    "one long formula shared by many cells",
    () =>
      workbook({
        sheets: {
          Pump: rows(
            `<c><f t="shared" si="0" ref="A1:A9">${"A1+".repeat(2700)}A1</f></c>`,
            ...Array.from({ length: 9000 }, () => '<c><f t="shared" si="0"/></c>'),
          ),
        },
      }),
    "workbook-size",
    "characters of formulas",
  ],
  [
    "a shared formula that nobody spells out",
    () => oneRow('<c><f t="shared" si="7"/></c>'),
    "workbook-cell",
    'shares formula "7"',
  ],
  ["a huge text", () => oneRow(`<c t="str"><v>${"a b".repeat(2e6)}</v></c>`), "workbook-size", ""],
  [
    "a text over the limit of a cell",
    () => oneRow(`<c t="str"><v>${"ab".repeat(20000)}</v></c>`),
    "workbook-cell",
    "32767",
  ],
  ...["ZZZZ9", "A0", "A1048577", "A-1", "XFE1", "", "$A$1", "A1:B2", "B", "7"].map(
    (address): Hostile => [
      `address ${JSON.stringify(address)}`,
      () => oneRow(`<c r="${address}"><v>1</v></c>`),
      "workbook-cell",
      "outside A1 to XFD1048576",
    ],
  ),
  [
    "a cell twice",
    () => oneRow('<c r="B1"><v>1</v></c><c r="B1"><v>2</v></c>'),
    "workbook-cell",
    "twice",
  ],
  [
    "a cell twice, in two rows of one number",
    () =>
      workbook({
        sheets: {
          Pump: '<sheetData><row r="2"><c><v>1</v></c></row><row/><row r="2"><c><v>2</v></c></row></sheetData>',
        },
      }),
    "workbook-cell",
    "Pump!A2 comes twice",
  ],
  [
    "a cell in another row",
    () => oneRow('<c r="B7"><v>1</v></c>'),
    "workbook-cell",
    "stands in row 1",
  ],
  ["two values", () => oneRow("<c><v>1</v><v>2</v></c>"), "workbook-cell", "two values"],
  ...["-1", "0", "1048577", "1e3", "x"].map(
    (row): Hostile => [
      `row ${row}`,
      () => workbook({ sheets: { Pump: `<sheetData><row r="${row}"/></sheetData>` } }),
      "workbook-cell",
      "not a row",
    ],
  ),
  ...["abc", "1,5", "0x10", "1e999", "NaN", "Infinity", "1 2"].map(
    (value): Hostile => [
      `number ${value}`,
      () => oneRow(`<c><v>${value}</v></c>`),
      "workbook-cell",
      "as a number",
    ],
  ),
  [
    "shared text out of range",
    () => oneRow('<c t="s"><v>3</v></c>'),
    "workbook-cell",
    "points to text",
  ],
  ["shared text -1", () => oneRow('<c t="s"><v>-1</v></c>'), "workbook-cell", "points to text"],
  ["boolean 2", () => oneRow('<c t="b"><v>2</v></c>'), "workbook-cell", "TRUE or FALSE"],
  ["date 2024-13-01", () => oneRow('<c t="d"><v>2024-13-01</v></c>'), "workbook-cell", "as a date"],
  ["an unknown type", () => oneRow('<c t="z"><v>2</v></c>'), "workbook-cell", "unknown type"],
  [
    "a name twice",
    () =>
      workbook({
        names: '<definedName name="a">1</definedName><definedName name="A">2</definedName>',
      }),
    "workbook-damaged",
    "comes twice",
  ],
  [
    "two sheets of one name",
    () =>
      altered({
        "xl/workbook.xml": String(
          parts({ sheets: { Pump: rows(), Basin: rows() } })["xl/workbook.xml"],
        ).replace("Basin", "PUMP"),
      }),
    "workbook-damaged",
    "same name",
  ],
];

/** Files with one huge claim in them, which must be read as if the claim was small. */
export const harmless: Readonly<Record<string, () => Uint8Array>> = {
  "a merge of the whole sheet": () =>
    withTail('<mergeCells><mergeCell ref="A1:XFD1048576"/></mergeCells>'),
  "a validation of the whole sheet": () =>
    withTail(
      '<dataValidations><dataValidation type="list" sqref="A1:XFD1048576"><formula1>"a,b"</formula1></dataValidation></dataValidations>',
    ),
  "a format of the whole sheet": () =>
    withTail(
      '<conditionalFormatting sqref="A1:XFD1048576"><cfRule type="expression"/></conditionalFormatting>',
    ),
  "hidden columns to the end": () =>
    workbook({
      sheets: {
        Pump: `<cols><col min="2" max="16384" hidden="1"/></cols>${rows("<c><v>1</v></c>")}`,
      },
    }),
  "a shared formula that claims the whole sheet": () =>
    oneRow('<c><f t="shared" si="0" ref="A1:XFD1048576">B1</f><v>1</v></c>'),
  "an array formula that claims the whole sheet": () =>
    oneRow('<c><f t="array" ref="A1:XFD1048576">B1</f><v>1</v></c>'),
  "a large photo": () => altered({ "xl/media/image1.jpeg": new Uint8Array(40e6) } as Parts),
};

/** A piece of XML so many times, each another. */
const repeated = (count: number, piece: (at: number) => string): string =>
  Array.from({ length: count }, (_, at) => piece(at)).join("");

/** One cell a row. */
const column = (count: number, cell: (at: number) => string): string =>
  `<sheetData>${repeated(count, (at) => `<row r="${at + 1}">${cell(at)}</row>`)}</sheetData>`;

const onlySheet = (inside: string) => workbook({ sheets: { Pump: inside } });

/** Just within the limits: files that cost the most of what is read, each by another way. */
export const costly: Readonly<Record<string, () => Uint8Array>> = {
  "dates without end": () =>
    onlySheet(column(90e3, (at) => `<c t="d"><v>2024-01-${10 + (at % 19)}</v></c>`)),
  "a comment before 99,000 cells": () =>
    onlySheet(`<!-- -->${column(99e3, (at) => `<c><v>${(at * 7919) % 1000003}</v></c>`)}`),
  "850,000 empty elements": () => onlySheet(repeated(850e3, (at) => `<x${at % 9973}/>`)),
  "a short formula shared by 95,000 cells": () =>
    onlySheet(
      rows(
        '<c><f t="shared" si="0" ref="A1:A9">A1+B1+C1+$D$1*E1+F1/G1</f></c>',
        ...Array.from({ length: 95e3 }, () => '<c><f t="shared" si="0"/></c>'),
      ),
    ),
  "90,000 custom properties": () =>
    workbook({
      custom: repeated(
        90e3,
        (at) => `<property pid="${at + 2}" name="p${at}"><vt:lpwstr>${at}</vt:lpwstr></property>`,
      ),
    }),
  "190 attributes on each of 3,000 elements": () =>
    onlySheet(
      repeated(3000, (at) => `<x ${repeated(190, (i) => `a${i}="${(at * i) % 1000003}" `)}/>`),
    ),
};

function withTail(tail: string): Uint8Array {
  return workbook({ sheets: { Pump: rows("<c><v>1</v></c>") + tail } });
}
