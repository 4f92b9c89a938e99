import { strToU8 } from "fflate";
import type { ChartBlock } from "../../../template/declare.js";
import { escaped } from "../package.js";
import {
  addRelation,
  addType,
  drawingOf,
  edit,
  type Parts,
  relations,
  sheetPart,
} from "../parts.js";
import type { Source } from "./cells.js";
import type { ChartPlace } from "./places.js";
import { isListed } from "./scatter.js";
import { chartXml } from "./xml.js";

const chartSpace = "http://schemas.openxmlformats.org/drawingml/2006/chart";

/** Puts charts into the parts of a written workbook: exceljs has none. */
export function addCharts(parts: Parts, source: Source, places: readonly ChartPlace[]): void {
  places.forEach((place, i) => {
    const chart = `chart${i + 1}.xml`;
    parts[`xl/charts/${chart}`] = strToU8(chartXml(source, place.block, place));
    addType(parts, `/xl/charts/${chart}`, "drawingml.chart");
    const drawing = drawingOf(parts, sheetPart(parts, place.sheet), `charts_${i + 1}`);
    const link = addRelation(parts, `xl/drawings/${drawing}`, "chart", `../charts/${chart}`);
    edit(parts, `xl/drawings/${drawing}`, "</xdr:wsDr>", anchor(place, i + 1, link));
  });
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
