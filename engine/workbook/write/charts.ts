import { strFromU8, strToU8 } from "fflate";
import type { Value } from "../../formula/value.js";
import { chartLines } from "../../template/layout.js";
import type { Model, PlacedBlock } from "../../template/model.js";
import { chartXml } from "./chart-xml.js";
import { lastColumn } from "./grid.js";
import { escaped } from "./package.js";

type Parts = Record<string, Uint8Array>;

const relations = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
const packageRelations = "http://schemas.openxmlformats.org/package/2006/relationships";
const drawingSpace = "http://schemas.openxmlformats.org/drawingml/2006/spreadsheetDrawing";
const mainSpace = "http://schemas.openxmlformats.org/drawingml/2006/main";
const chartSpace = "http://schemas.openxmlformats.org/drawingml/2006/chart";
const head = `<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n`;

/** Puts the charts of a model into the parts of a written workbook: exceljs has none. */
export function addCharts(parts: Parts, model: Model, values: readonly Value[]): void {
  let chartNumber = 0;
  for (const { name } of model.sheets) {
    const placed = model.placed.filter(
      ({ sheet, block }) => sheet === name && block.kind === "chart",
    );
    if (placed.length === 0) continue;
    const first = chartNumber + 1;
    for (const { block } of placed) {
      if (block.kind !== "chart") continue;
      chartNumber += 1;
      parts[`xl/charts/chart${chartNumber}.xml`] = strToU8(chartXml(model, values, block));
      addType(parts, `/xl/charts/chart${chartNumber}.xml`, "drawingml.chart");
    }
    addDrawing(parts, sheetPart(parts, name), placed, first);
  }
}

/** One drawing part holds all charts of a sheet. */
function addDrawing(
  parts: Parts,
  sheetPath: string,
  placed: readonly PlacedBlock[],
  first: number,
) {
  const drawing = `drawing_charts_${first}.xml`;
  const anchors = placed.map((one, i) => anchor(one, first + i, i + 1)).join("");
  parts[`xl/drawings/${drawing}`] = strToU8(
    `${head}<xdr:wsDr xmlns:xdr="${drawingSpace}" xmlns:a="${mainSpace}">${anchors}</xdr:wsDr>`,
  );
  const links = placed.map(
    (_, i) =>
      `<Relationship Id="rId${i + 1}" Type="${relations}/chart" Target="../charts/chart${first + i}.xml"/>`,
  );
  parts[`xl/drawings/_rels/${drawing}.rels`] = strToU8(
    `${head}<Relationships xmlns="${packageRelations}">${links.join("")}</Relationships>`,
  );
  addType(parts, `/xl/drawings/${drawing}`, "drawing");
  linkDrawing(parts, sheetPath, drawing);
}

function linkDrawing(parts: Parts, sheetPath: string, drawing: string): void {
  const relsPath = sheetPath.replace("worksheets/", "worksheets/_rels/").concat(".rels");
  const rels =
    parts[relsPath] === undefined
      ? `${head}<Relationships xmlns="${packageRelations}"></Relationships>`
      : strFromU8(parts[relsPath]);
  const link = `<Relationship Id="rIdCharts" Type="${relations}/drawing" Target="../drawings/${drawing}"/>`;
  parts[relsPath] = strToU8(rels.replace("</Relationships>", `${link}</Relationships>`));
  const xml = strFromU8(parts[sheetPath] as Uint8Array);
  // the standard fixes the order: a drawing comes before notes, table parts and the end
  const next = ["<legacyDrawing", "<tableParts", "<extLst", "</worksheet>"].find((mark) =>
    xml.includes(mark),
  ) as string;
  parts[sheetPath] = strToU8(xml.replace(next, `<drawing r:id="rIdCharts"/>${next}`));
}

function anchor({ top }: PlacedBlock, chart: number, number: number): string {
  const corner = (tag: string, column: number, row: number) =>
    `<xdr:${tag}><xdr:col>${column}</xdr:col><xdr:colOff>0</xdr:colOff><xdr:row>${row}</xdr:row><xdr:rowOff>0</xdr:rowOff></xdr:${tag}>`;
  const empty = `<xdr:xfrm><a:off x="0" y="0"/><a:ext cx="0" cy="0"/></xdr:xfrm>`;
  return (
    `<xdr:twoCellAnchor>${corner("from", 0, top)}${corner("to", lastColumn - 2, top + chartLines - 1)}` +
    `<xdr:graphicFrame macro=""><xdr:nvGraphicFramePr><xdr:cNvPr id="${number + 1}" name="Chart ${chart}"/><xdr:cNvGraphicFramePr/></xdr:nvGraphicFramePr>${empty}` +
    `<a:graphic><a:graphicData uri="${chartSpace}"><c:chart xmlns:c="${chartSpace}" xmlns:r="${relations}" r:id="rId${number}"/></a:graphicData></a:graphic>` +
    `</xdr:graphicFrame><xdr:clientData/></xdr:twoCellAnchor>`
  );
}

function addType(parts: Parts, name: string, kind: string): void {
  const types = strFromU8(parts["[Content_Types].xml"] as Uint8Array);
  const type = `application/vnd.openxmlformats-officedocument.${kind}+xml`;
  const override = `<Override PartName="${name}" ContentType="${type}"/>`;
  parts["[Content_Types].xml"] = strToU8(types.replace("</Types>", `${override}</Types>`));
}

/** The part of a sheet, through the workbook's relations. */
function sheetPart(parts: Parts, sheet: string): string {
  const workbook = strFromU8(parts["xl/workbook.xml"] as Uint8Array);
  const rels = strFromU8(parts["xl/_rels/workbook.xml.rels"] as Uint8Array);
  const tag = workbook
    .match(/<sheet [^>]*>/g)
    ?.find((one) => one.includes(`name="${escaped(sheet)}"`));
  const id = tag?.match(/r:id="([^"]*)"/)?.[1];
  const link = rels.match(/<Relationship [^>]*>/g)?.find((one) => one.includes(`Id="${id}"`));
  const target = link?.match(/Target="([^"]*)"/)?.[1];
  if (target === undefined) throw new Error(`The written workbook has no sheet "${sheet}".`);
  return `xl/${target}`;
}
