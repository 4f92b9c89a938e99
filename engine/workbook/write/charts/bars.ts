import type { Series } from "../../../template/declare.js";
import type { Cell } from "../../../template/model.js";
import { numberFormat } from "../number-format.js";
import { escaped } from "../package.js";
import { cellsOf, numbers, type Source, texts } from "./cells.js";
import { fills, ink, solid, textProperties } from "./looks.js";

/** The series of a bar chart (ISO/IEC 29500-1 §21.2.2.16), bars lying across, with its grouping. */
export function barPlot(source: Source, all: readonly Series[], axes: string): string {
  const stacked = all.some(({ marks }) => marks === "stack");
  const series = all.map((one, i) => barSeries(source, one, i, stacked)).join("");
  return (
    `<c:barChart><c:barDir val="bar"/><c:grouping val="${stacked ? "stacked" : "clustered"}"/><c:varyColors val="0"/>${series}` +
    `<c:gapWidth val="${stacked ? 35 : 60}"/>${stacked ? `<c:overlap val="100"/>` : ""}${axes}</c:barChart>`
  );
}

function barSeries(source: Source, one: Series, i: number, stacked: boolean): string {
  const { color, text } = fills[i % fills.length] as (typeof fills)[number];
  const [names, figures] = [cellsOf(source.model, one.x), cellsOf(source.model, one.y)];
  const outline = `<a:ln w="9525">${solid(ink)}</a:ln>`;
  const labels =
    one.says === true
      ? figuresShown(source, figures, stacked ? "ctr" : "outEnd", stacked ? text : ink)
      : "";
  return (
    `<c:ser><c:idx val="${i}"/><c:order val="${i}"/><c:tx><c:v>${escaped(one.label)}</c:v></c:tx><c:spPr>${solid(color)}${outline}</c:spPr>` +
    `<c:invertIfNegative val="0"/>${labels}<c:cat>${texts(source, names)}</c:cat><c:val>${numbers(source, figures)}</c:val></c:ser>`
  );
}

/** The figures at the bars; a bar of nothing has none. */
function figuresShown(
  { model }: Source,
  [first]: readonly Cell[],
  place: string,
  color: string,
): string {
  const { declaration } = first as Cell;
  // whole dollars: a bar shows no cents
  const format = numberFormat(declaration, model.system).replace(/^.*("\$"#,##0)\.0+$/, "$1");
  return (
    `<c:dLbls><c:numFmt formatCode="${escaped(`${format};-${format};`)}" sourceLinked="0"/><c:spPr><a:noFill/><a:ln><a:noFill/></a:ln></c:spPr>` +
    `${textProperties(9, { color })}<c:dLblPos val="${place}"/><c:showLegendKey val="0"/><c:showVal val="1"/><c:showCatName val="0"/>` +
    `<c:showSerName val="0"/><c:showPercent val="0"/><c:showBubbleSize val="0"/></c:dLbls>`
  );
}
