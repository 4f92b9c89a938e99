import { type Document, program, undated } from "../document.js";
import { relations } from "./links.js";
import { attribute, cellText, content, head } from "./text.js";

const types = "http://schemas.openxmlformats.org/officeDocument/2006/docPropsVTypes";

/** What a file manager shows of the book (ISO/IEC 29500-2, 11). */
export function coreXml({ title, creator, lastModifiedBy }: Document): string {
  const time = undated.toISOString().replace(/\.\d{3}/, "");
  const at = (what: string) =>
    `<dcterms:${what} xsi:type="dcterms:W3CDTF">${time}</dcterms:${what}>`;
  return (
    `${head}<cp:coreProperties xmlns:cp="http://schemas.openxmlformats.org/package/2006/metadata/core-properties" ` +
    'xmlns:dc="http://purl.org/dc/elements/1.1/" xmlns:dcterms="http://purl.org/dc/terms/" xmlns:dcmitype="http://purl.org/dc/dcmitype/" xmlns:xsi="http://www.w3.org/2001/XMLSchema-instance">' +
    `<dc:creator>${content(creator)}</dc:creator><dc:title>${content(title)}</dc:title><dc:subject></dc:subject><dc:description></dc:description>` +
    `<cp:keywords></cp:keywords><cp:category></cp:category><cp:lastModifiedBy>${content(lastModifiedBy)}</cp:lastModifiedBy>${at("created")}${at("modified")}</cp:coreProperties>`
  );
}

/**
 * Which program wrote the book, and its sheets (ISO/IEC 29500-1, 22.2). The program is named as it is: where it is
 * one that they know, others rely on its stored results instead of calculating.
 */
export function appXml({ company }: Document, sheets: readonly string[]): string {
  const count = sheets.length;
  const names = sheets.map((name) => `<vt:lpstr>${content(name)}</vt:lpstr>`);
  return (
    `${head}<Properties xmlns="http://schemas.openxmlformats.org/officeDocument/2006/extended-properties" xmlns:vt="${types}">` +
    `<Application>${program}</Application><DocSecurity>0</DocSecurity><ScaleCrop>false</ScaleCrop>` +
    `<HeadingPairs><vt:vector size="2" baseType="variant"><vt:variant><vt:lpstr>Worksheets</vt:lpstr></vt:variant><vt:variant><vt:i4>${count}</vt:i4></vt:variant></vt:vector></HeadingPairs>` +
    `<TitlesOfParts><vt:vector size="${count}" baseType="lpstr">${names.join("")}</vt:vector></TitlesOfParts>` +
    `<Company>${content(company)}</Company><Manager></Manager><LinksUpToDate>false</LinksUpToDate><SharedDoc>false</SharedDoc><HyperlinksChanged>false</HyperlinksChanged></Properties>`
  );
}

/** The format id that the standard fixes for custom properties. */
const customFormat = "{D5CDD505-2E9C-101B-9397-08002B2CF9AE}";
export const customType = "application/vnd.openxmlformats-officedocument.custom-properties+xml";
export const customRelation = `${relations}/custom-properties`;

/** Properties of our own (ISO/IEC 29500-1, 22.3). */
export function customXml(properties: Readonly<Record<string, string>>): string {
  const entries = Object.entries(properties).map(
    ([name, value], i) =>
      `<property fmtid="${customFormat}" pid="${i + 2}" name="${attribute(name)}">` +
      `<vt:lpwstr>${cellText(value)}</vt:lpwstr></property>`,
  );
  return `${head}<Properties xmlns="http://schemas.openxmlformats.org/officeDocument/2006/custom-properties" xmlns:vt="${types}">${entries.join("")}</Properties>`;
}
