import type { Archive } from "./archive.js";
import { escaped } from "./package.js";
import { linksOf, relations } from "./xml/links.js";
import { head } from "./xml/text.js";

export const drawingSpace = "http://schemas.openxmlformats.org/drawingml/2006/spreadsheetDrawing";
export const mainSpace = "http://schemas.openxmlformats.org/drawingml/2006/main";
const packageRelations = "http://schemas.openxmlformats.org/package/2006/relationships";

/** The drawing of a sheet, which holds its charts and pictures; made where it has none. */
export function drawingOf(parts: Archive, sheet: string, name: string): string {
  const xml = parts.text(sheet);
  const id = /<drawing r:id="([^"]*)"/.exec(xml)?.[1];
  if (id !== undefined) {
    const links = parts.text(linksOf(sheet)).match(/<Relationship [^>]*>/g) ?? [];
    const target = /Target="[^"]*?([^"/]*)"/.exec(
      links.find((one) => one.includes(`Id="${id}"`)) ?? "",
    );
    if (target?.[1] === undefined) throw new Error(`The part ${sheet} names a drawing it has not.`);
    return target[1];
  }
  const drawing = `drawing_${name}.xml`;
  parts.put(
    `xl/drawings/${drawing}`,
    `${head}<xdr:wsDr xmlns:xdr="${drawingSpace}" xmlns:a="${mainSpace}"></xdr:wsDr>`,
  );
  addType(parts, `/xl/drawings/${drawing}`, "drawing");
  const link = addRelation(parts, sheet, "drawing", `../drawings/${drawing}`);
  // the standard fixes the order: a drawing comes before notes, table parts and the end
  const next = ["<legacyDrawing", "<tableParts", "<extLst", "</worksheet>"].find((mark) =>
    xml.includes(mark),
  ) as string;
  edit(parts, sheet, next, `<drawing r:id="${link}"/>`);
  return drawing;
}

/** Puts text before the last place of a mark in a part. */
export function edit(parts: Archive, name: string, before: string, inserted: string): void {
  const xml = parts.text(name);
  const at = xml.lastIndexOf(before);
  parts.put(name, xml.slice(0, at) + inserted + xml.slice(at));
}

/** Links one part to another; returns the id of the link. */
export function addRelation(parts: Archive, from: string, kind: string, target: string): string {
  const path = linksOf(from);
  if (!parts.has(path)) {
    parts.put(path, `${head}<Relationships xmlns="${packageRelations}"></Relationships>`);
  }
  const count = parts.text(path).match(/<Relationship /g)?.length ?? 0;
  const id = `rIdAdded${count + 1}`;
  const link = `<Relationship Id="${id}" Type="${relations}/${kind}" Target="${target}"/>`;
  edit(parts, path, "</Relationships>", link);
  return id;
}

/** Says of a part what it is. */
export function addType(parts: Archive, name: string, kind: string): void {
  const type = `application/vnd.openxmlformats-officedocument.${kind}+xml`;
  edit(
    parts,
    "[Content_Types].xml",
    "</Types>",
    `<Override PartName="${name}" ContentType="${type}"/>`,
  );
}

/** The part of a sheet, through the workbook's relations. */
export function sheetPart(parts: Archive, sheet: string): string {
  const tag = parts
    .text("xl/workbook.xml")
    .match(/<sheet [^>]*>/g)
    ?.find((one) => one.includes(`name="${escaped(sheet)}"`));
  const id = tag?.match(/r:id="([^"]*)"/)?.[1];
  const link = parts
    .text("xl/_rels/workbook.xml.rels")
    .match(/<Relationship [^>]*>/g)
    ?.find((one) => one.includes(`Id="${id}"`));
  const target = link?.match(/Target="([^"]*)"/)?.[1];
  if (target === undefined) throw new Error(`The written workbook has no sheet "${sheet}".`);
  return `xl/${target}`;
}
