import { strFromU8, strToU8 } from "fflate";
import type { ChartBlock } from "../../../template/declare.js";
import { escaped } from "../package.js";
import type { Source } from "./cells.js";
import type { ChartPlace } from "./places.js";
import { isListed } from "./scatter.js";
import { chartXml } from "./xml.js";

type Parts = Record<string, Uint8Array>;

const relations = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
const packageRelations = "http://schemas.openxmlformats.org/package/2006/relationships";
const drawingSpace = "http://schemas.openxmlformats.org/drawingml/2006/spreadsheetDrawing";
const mainSpace = "http://schemas.openxmlformats.org/drawingml/2006/main";
const chartSpace = "http://schemas.openxmlformats.org/drawingml/2006/chart";
const head = `<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n`;

/** Puts charts into the parts of a written workbook: exceljs has none. */
export function addCharts(parts: Parts, source: Source, places: readonly ChartPlace[]): void {
  places.forEach((place, i) => {
    const chart = `chart${i + 1}.xml`;
    parts[`xl/charts/${chart}`] = strToU8(chartXml(source, place.block, place));
    addType(parts, `/xl/charts/${chart}`, "drawingml.chart");
    const drawing = drawingOf(parts, sheetPart(parts, place.sheet), i + 1);
    const link = addRelation(parts, `xl/drawings/${drawing}`, "chart", `../charts/${chart}`);
    edit(parts, `xl/drawings/${drawing}`, "</xdr:wsDr>", anchor(place, i + 1, link));
  });
}

/** The drawing of a sheet, which holds its charts and pictures; made where it has none. */
function drawingOf(parts: Parts, sheet: string, number: number): string {
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
  const drawing = `drawing_charts_${number}.xml`;
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

/** The place of a chart: its upper left corner in a cell, and its size, so that widths of columns leave its scale alone. */
function anchor(
  { line, left, width, height, block }: ChartPlace,
  number: number,
  link: string,
): string {
  const emu = (points: number) => Math.round(points * 12700);
  const corner = `<xdr:from><xdr:col>${left.column}</xdr:col><xdr:colOff>${emu(left.points)}</xdr:colOff><xdr:row>${line - 1}</xdr:row><xdr:rowOff>0</xdr:rowOff></xdr:from>`;
  const named = `id="${number + 1000}" name="Chart ${number}" descr="${escaped(altOf(block))}"`;
  return (
    `<xdr:oneCellAnchor>${corner}<xdr:ext cx="${emu(width)}" cy="${emu(height)}"/>` +
    `<xdr:graphicFrame macro=""><xdr:nvGraphicFramePr><xdr:cNvPr ${named}/><xdr:cNvGraphicFramePr/></xdr:nvGraphicFramePr>` +
    `<xdr:xfrm><a:off x="0" y="0"/><a:ext cx="0" cy="0"/></xdr:xfrm><a:graphic><a:graphicData uri="${chartSpace}">` +
    `<c:chart xmlns:c="${chartSpace}" xmlns:r="${relations}" r:id="${link}"/></a:graphicData></a:graphic></xdr:graphicFrame><xdr:clientData/></xdr:oneCellAnchor>`
  );
}

/** What a chart shows, in words. */
export function altOf({ heading, alt, series }: ChartBlock): string {
  const drawn = series.filter(isListed).map(({ label }) => label);
  return `${heading}. ${alt ?? `${drawn.join(", ")}.`}`;
}

const textOf = (parts: Parts, name: string): string => {
  const part = parts[name];
  if (part === undefined) throw new Error(`The written workbook has no part ${name}.`);
  return strFromU8(part);
};

function edit(parts: Parts, name: string, before: string, inserted: string): void {
  const xml = textOf(parts, name);
  const at = xml.lastIndexOf(before);
  parts[name] = strToU8(xml.slice(0, at) + inserted + xml.slice(at));
}

const relationsOf = (part: string): string => part.replace(/([^/]*)$/, "_rels/$1.rels");

/** Links one part to another; returns the id of the link. */
function addRelation(parts: Parts, from: string, kind: string, target: string): string {
  const path = relationsOf(from);
  parts[path] ??= strToU8(`${head}<Relationships xmlns="${packageRelations}"></Relationships>`);
  const count = textOf(parts, path).match(/<Relationship /g)?.length ?? 0;
  const id = `rIdChart${count + 1}`;
  const link = `<Relationship Id="${id}" Type="${relations}/${kind}" Target="${target}"/>`;
  edit(parts, path, "</Relationships>", link);
  return id;
}

function addType(parts: Parts, name: string, kind: string): void {
  const type = `application/vnd.openxmlformats-officedocument.${kind}+xml`;
  edit(
    parts,
    "[Content_Types].xml",
    "</Types>",
    `<Override PartName="${name}" ContentType="${type}"/>`,
  );
}

/** The part of a sheet, through the workbook's relations. */
function sheetPart(parts: Parts, sheet: string): string {
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
