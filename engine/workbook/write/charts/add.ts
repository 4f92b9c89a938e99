import type { ChartBlock } from "../../../template/declare.js";
import { escaped } from "../package.js";
import { drawingSpace, mainSpace } from "../parts.js";
import { type Link, linksXml, relations } from "../xml/links.js";
import { head } from "../xml/text.js";
import type { Source } from "./cells.js";
import type { ChartPlace } from "./places.js";
import { isListed } from "./scatter.js";
import { chartXml } from "./xml.js";

const chartSpace = "http://schemas.openxmlformats.org/drawingml/2006/chart";

/** A drawing that holds the charts of a sheet. */
interface Drawing {
  readonly name: string;
  readonly anchors: string[];
  readonly links: Link[];
}

/** The charts of a book, and the drawings by which they stand on its sheets. */
export class Charts {
  readonly #drawings = new Map<string, Drawing>();
  /** The parts in the order in which the list of types tells them: charts, each drawing after its first one. */
  readonly types: { readonly part: string; readonly kind: string }[] = [];

  constructor(
    private readonly source: Source,
    private readonly places: readonly ChartPlace[],
  ) {
    places.forEach((place, i) => {
      this.types.push({ part: `/xl/charts/chart${i + 1}.xml`, kind: "drawingml.chart" });
      const { anchors, links } = this.#drawingOf(place.sheet, i + 1);
      const id = `rIdAdded${links.length + 1}`;
      links.push({ id, type: `${relations}/chart`, target: `../charts/chart${i + 1}.xml` });
      anchors.push(anchor(place, i + 1, id));
    });
  }

  #drawingOf(sheet: string, number: number): Drawing {
    const known = this.#drawings.get(sheet);
    if (known !== undefined) return known;
    const made = { name: `drawing_charts_${number}.xml`, anchors: [], links: [] };
    this.#drawings.set(sheet, made);
    this.types.push({ part: `/xl/drawings/${made.name}`, kind: "drawing" });
    return made;
  }

  /** The name of a sheet's drawing; none where it has no charts. */
  drawingOn(sheet: string): string | undefined {
    return this.#drawings.get(sheet)?.name;
  }

  /** The parts by name. */
  *parts(): Generator<[name: string, xml: string]> {
    for (const [i, place] of this.places.entries()) {
      yield [`xl/charts/chart${i + 1}.xml`, chartXml(this.source, place.block, place)];
    }
    for (const { name, anchors, links } of this.#drawings.values()) {
      yield [
        `xl/drawings/${name}`,
        `${head}<xdr:wsDr xmlns:xdr="${drawingSpace}" xmlns:a="${mainSpace}">${anchors.join("")}</xdr:wsDr>`,
      ];
      yield [`xl/drawings/_rels/${name}.rels`, linksXml(links)];
    }
  }
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
