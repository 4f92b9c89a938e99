import { strToU8, type Zippable, zipSync } from "fflate";

export const main = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
export const office = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
const packageBase = "http://schemas.openxmlformats.org/package/2006";
const typeBase = "application/vnd.openxmlformats-officedocument.spreadsheetml";

export type Parts = Record<string, string | Uint8Array>;

/** What the builder is told; each sheet is the inside of <worksheet>. */
export interface Plan {
  readonly sheets?: Readonly<Record<string, string>>;
  /** Extra attributes of a <sheet>, by its name. */
  readonly states?: Readonly<Record<string, string>>;
  readonly names?: string;
  /** The inside of <sst>. */
  readonly strings?: string;
  readonly custom?: string;
  readonly core?: string;
  readonly workbookProperties?: string;
}

const declaration = '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n';

/** The parts of a small valid workbook, as text, ready to be spoilt. */
export function parts(plan: Plan = {}): Parts {
  const sheets = Object.entries(plan.sheets ?? { Pump: rows("<c><v>1</v></c>") });
  const made: Parts = {
    "[Content_Types].xml": `${declaration}<Types xmlns="${packageBase}/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Default Extension="xml" ContentType="application/xml"/><Override PartName="/xl/workbook.xml" ContentType="${typeBase}.sheet.main+xml"/>${sheets
      .map(
        (_, at) =>
          `<Override PartName="/xl/worksheets/sheet${at + 1}.xml" ContentType="${typeBase}.worksheet+xml"/>`,
      )
      .join("")}</Types>`,
    "_rels/.rels": `<Relationships xmlns="${packageBase}/relationships"><Relationship Id="rId1" Type="${office}/officeDocument" Target="xl/workbook.xml"/>${
      plan.core === undefined
        ? ""
        : `<Relationship Id="rId2" Type="${packageBase}/relationships/metadata/core-properties" Target="docProps/core.xml"/>`
    }${
      plan.custom === undefined
        ? ""
        : `<Relationship Id="rId3" Type="${office}/custom-properties" Target="/docProps/custom.xml"/>`
    }</Relationships>`,
    "xl/workbook.xml": `${declaration}<workbook xmlns="${main}" xmlns:r="${office}">${plan.workbookProperties ?? ""}<sheets>${sheets
      .map(
        ([name], at) =>
          `<sheet name="${name}" sheetId="${at + 1}" ${plan.states?.[name] ?? ""} r:id="rId${at + 1}"/>`,
      )
      .join("")}</sheets><definedNames>${plan.names ?? ""}</definedNames></workbook>`,
    "xl/_rels/workbook.xml.rels": `<Relationships xmlns="${packageBase}/relationships">${sheets
      .map(
        (_, at) =>
          `<Relationship Id="rId${at + 1}" Type="${office}/worksheet" Target="worksheets/sheet${at + 1}.xml"/>`,
      )
      .join("")}${
      plan.strings === undefined
        ? ""
        : `<Relationship Id="strings" Type="${office}/sharedStrings" Target="/xl/sharedStrings.xml"/>`
    }</Relationships>`,
  };
  sheets.forEach(([, inside], at) => {
    made[`xl/worksheets/sheet${at + 1}.xml`] =
      `${declaration}<worksheet xmlns="${main}" xmlns:r="${office}">${inside}</worksheet>`;
  });
  if (plan.strings !== undefined) {
    made["xl/sharedStrings.xml"] = `<sst xmlns="${main}">${plan.strings}</sst>`;
  }
  if (plan.core !== undefined) {
    made["docProps/core.xml"] =
      `<cp:coreProperties xmlns:cp="${packageBase}/metadata/core-properties" xmlns:dc="http://purl.org/dc/elements/1.1/" xmlns:dcterms="http://purl.org/dc/terms/">${plan.core}</cp:coreProperties>`;
  }
  if (plan.custom !== undefined) {
    made["docProps/custom.xml"] =
      `<Properties xmlns="http://schemas.openxmlformats.org/officeDocument/2006/custom-properties" xmlns:vt="http://schemas.openxmlformats.org/officeDocument/2006/docPropsVTypes">${plan.custom}</Properties>`;
  }
  return made;
}

/** <sheetData> with each argument as one row. */
export function rows(...cells: string[]): string {
  return `<sheetData>${cells.map((row, at) => `<row r="${at + 1}">${row}</row>`).join("")}</sheetData>`;
}

/** Bytes from which on a part is packed in haste: packing it well takes longer than reading it. */
const large = 500e3;

export function zipped(from: Parts, level: 0 | 1 | 6 = 6): Uint8Array {
  const files: Zippable = {};
  for (const [name, content] of Object.entries(from)) {
    const bytes = typeof content === "string" ? strToU8(content) : content;
    files[name] = bytes.length < large ? bytes : [bytes, { level: level === 0 ? 0 : 1 }];
  }
  return zipSync(files, { level, mtime: "2020-01-01T00:00:00" });
}

/** A whole small workbook. */
export function workbook(plan: Plan = {}): Uint8Array {
  return zipped(parts(plan));
}

/** A workbook of one sheet whose first row holds the given <c> elements. */
export function oneRow(cells: string, plan: Plan = {}): Uint8Array {
  return workbook({ ...plan, sheets: { Pump: rows(cells) } });
}

/** A workbook with some parts replaced or added. */
export function altered(change: Parts, plan: Plan = {}): Uint8Array {
  return zipped({ ...parts(plan), ...change });
}
