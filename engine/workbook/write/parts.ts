import { strFromU8, strToU8 } from "fflate";
import { escaped } from "./package.js";
import { relations } from "./xml/links.js";
import { head } from "./xml/text.js";

/** The files of a written workbook, by name. */
export type Parts = Record<string, Uint8Array>;

export const drawingSpace = "http://schemas.openxmlformats.org/drawingml/2006/spreadsheetDrawing";
export const mainSpace = "http://schemas.openxmlformats.org/drawingml/2006/main";
const packageRelations = "http://schemas.openxmlformats.org/package/2006/relationships";

/** The drawing of a sheet, which holds its charts and pictures; made where it has none. */
export function drawingOf(parts: Parts, sheet: string, name: string): string {
  const xml = textOf(parts, sheet);
  const id = /<drawing r:id="([^"]*)"/.exec(xml)?.[1];
  if (id !== undefined) {
    const links = textOf(parts, relationsOf(sheet)).match(/<Relationship [^>]*>/g) ?? [];
    const target = /Target="[^"]*?([^"/]*)"/.exec(
      links.find((one) => one.includes(`Id="${id}"`)) ?? "",
    );
    if (target?.[1] === undefined) throw new Error(`The part ${sheet} names a drawing it has not.`);
    return target[1];
  }
  const drawing = `drawing_${name}.xml`;
  parts[`xl/drawings/${drawing}`] = strToU8(
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

const textOf = (parts: Parts, name: string): string => {
  const part = parts[name];
  if (part === undefined) throw new Error(`The written workbook has no part ${name}.`);
  return strFromU8(part);
};

/** Puts text before the last place of a mark in a part. */
export function edit(parts: Parts, name: string, before: string, inserted: string): void {
  const xml = textOf(parts, name);
  const at = xml.lastIndexOf(before);
  parts[name] = strToU8(xml.slice(0, at) + inserted + xml.slice(at));
}

const relationsOf = (part: string): string => part.replace(/([^/]*)$/, "_rels/$1.rels");

/** Links one part to another; returns the id of the link. */
export function addRelation(parts: Parts, from: string, kind: string, target: string): string {
  const path = relationsOf(from);
  parts[path] ??= strToU8(`${head}<Relationships xmlns="${packageRelations}"></Relationships>`);
  const count = textOf(parts, path).match(/<Relationship /g)?.length ?? 0;
  const id = `rIdAdded${count + 1}`;
  const link = `<Relationship Id="${id}" Type="${relations}/${kind}" Target="${target}"/>`;
  edit(parts, path, "</Relationships>", link);
  return id;
}

/** Says of a part what it is. */
export function addType(parts: Parts, name: string, kind: string): void {
  const type = `application/vnd.openxmlformats-officedocument.${kind}+xml`;
  edit(
    parts,
    "[Content_Types].xml",
    "</Types>",
    `<Override PartName="${name}" ContentType="${type}"/>`,
  );
}

/** The part of a sheet, through the workbook's relations. */
export function sheetPart(parts: Parts, sheet: string): string {
  const tag = textOf(parts, "xl/workbook.xml")
    .match(/<sheet [^>]*>/g)
    ?.find((one) => one.includes(`name="${escaped(sheet)}"`));
  const id = tag?.match(/r:id="([^"]*)"/)?.[1];
  const link = textOf(parts, "xl/_rels/workbook.xml.rels")
    .match(/<Relationship [^>]*>/g)
    ?.find((one) => one.includes(`Id="${id}"`));
  const target = link?.match(/Target="([^"]*)"/)?.[1];
  if (target === undefined) throw new Error(`The written workbook has no sheet "${sheet}".`);
  return `xl/${target}`;
}
