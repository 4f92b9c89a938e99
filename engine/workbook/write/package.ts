import { strFromU8, strToU8, unzipSync } from "fflate";
import { signProgram } from "./document.js";
import { typeface } from "./look.js";
import { customRelation, customType, customXml } from "./xml/properties.js";
import { packedNow, zipOf } from "./zip.js";

/** Adds to a workbook of exceljs what that has not (custom properties), and fixes the times within the zip. */
export const finishPackage = (
  bytes: Uint8Array,
  properties: Readonly<Record<string, string>>,
): Uint8Array => zipped(finishedParts(bytes, properties));

/** The parts of such a workbook, not packed yet. */
export function finishedParts(
  bytes: Uint8Array,
  properties: Readonly<Record<string, string>>,
): Record<string, Uint8Array> {
  const unpacked = Object.entries(unzipSync(bytes));
  const parts = Object.fromEntries(unpacked.filter(([name]) => !name.endsWith("/")));
  setDefaultFont(parts);
  signProgram(parts);
  const edit = (name: string, before: string, inserted: string) => {
    const part = parts[name];
    if (part === undefined) throw new Error(`The written workbook has no part ${name}.`);
    const xml = strFromU8(part);
    if (!xml.includes(before)) throw new Error(`The part ${name} has no ${before}.`);
    parts[name] = strToU8(xml.replace(before, inserted + before));
  };
  parts["docProps/custom.xml"] = strToU8(customXml(properties));
  edit(
    "[Content_Types].xml",
    "</Types>",
    `<Override PartName="/docProps/custom.xml" ContentType="${customType}"/>`,
  );
  edit(
    "_rels/.rels",
    "</Relationships>",
    `<Relationship Id="rIdCustom" Type="${customRelation}" Target="docProps/custom.xml"/>`,
  );
  for (const [name, part] of Object.entries(parts)) {
    parts[name] = withoutNoncharacters(holdsTexts.test(name) ? withEscapes(part) : part);
  }
  return parts;
}

/** Packs parts in a fixed order with fixed times: the same parts give the same bytes. */
export function zipped(parts: Readonly<Record<string, Uint8Array>>): Uint8Array {
  const ordered = Object.entries(parts).sort(([a], [b]) => contentTypesFirst(a, b));
  return zipOf(ordered.map(([name, part]) => packedNow(name, part, 6)));
}

/**
 * Column widths are counted in digits of the workbook's default font. exceljs sets one
 * that not every machine has, and its stand-in makes columns wider than the page.
 */
function setDefaultFont(parts: Record<string, Uint8Array>): void {
  const path = "xl/styles.xml";
  const xml = strFromU8(parts[path] as Uint8Array);
  const font = `<font><sz val="10"/><name val="${typeface}"/><family val="2"/></font>`;
  parts[path] = strToU8(xml.replace(/<font>.*?<\/font>/, font));
}

/** Readers that stream expect the content types at the start. */
export function contentTypesFirst(a: string, b: string): number {
  const rank = (name: string) => (name === "[Content_Types].xml" ? 0 : 1);
  return rank(a) - rank(b) || (a < b ? -1 : 1);
}

/** The parts of exceljs with texts of type ST_Xstring that people gave. */
const holdsTexts = /^xl\/(?:sharedStrings|worksheets\/sheet\d+)\.xml$/;

/**
 * "_x000D_" within a text stands for a carriage return (ISO/IEC 29500-1, 22.9.2.19). Where people
 * typed just these letters, the underscore before them is written as its own escape.
 */
function withEscapes(part: Uint8Array<ArrayBuffer>): Uint8Array<ArrayBuffer> {
  const xml = strFromU8(part);
  if (!/_x[0-9A-Fa-f]{4}_/.test(xml)) return part;
  return strToU8(
    xml.replaceAll(/>[^<]*_x[^<]*</g, (text) =>
      text.replaceAll(/_(?=x[0-9A-Fa-f]{4}_)/g, "_x005F_"),
    ),
  );
}

/** exceljs leaves out control characters, but not these two, which XML cannot hold either. */
function withoutNoncharacters(part: Uint8Array<ArrayBuffer>): Uint8Array<ArrayBuffer> {
  const bytes = Buffer.from(part.buffer, part.byteOffset, part.byteLength);
  if (!bytes.includes("\ufffe") && !bytes.includes("\uffff")) return part;
  return strToU8(strFromU8(part).replaceAll(/[\ufffe\uffff]/g, ""));
}

/** Characters that XML 1.0 has no way to write (section 2.2), lone halves of a pair among them. */
const unwritable =
  // biome-ignore lint/suspicious/noControlCharactersInRegex: these are what is looked for
  /[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]|[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/g;

/** Text for the inside of an XML element or attribute; what XML cannot hold is left out. */
export function escaped(text: string): string {
  return text
    .replaceAll(unwritable, "")
    .replaceAll("&", "&amp;")
    .replaceAll("<", "&lt;")
    .replaceAll(">", "&gt;")
    .replaceAll('"', "&quot;");
}
