import { type ChartBlock, isBar } from "../../../template/chart.js";
import type { Model } from "../../../template/model.js";
import { unitOf } from "../../../units/quantity.js";
import { shownUnit } from "../number-format.js";
import { type Axis, axesNamed, axisIds, nameAxis, titled, valueAxis } from "./axes.js";
import { barPlot } from "./bars.js";
import { cellsOf, type Source } from "./cells.js";
import { textProperties } from "./looks.js";
import { scatterSeries } from "./scatter.js";

const chartSpace = "http://schemas.openxmlformats.org/drawingml/2006/chart";
const mainSpace = "http://schemas.openxmlformats.org/drawingml/2006/main";

/** The size of a chart, in points. */
export interface Size {
  readonly width: number;
  readonly height: number;
}

/**
 * The DrawingML of a chart (ISO/IEC 29500-1 part 21): its points, and the texts beside them, are
 * references with values cached. What its rows hide is drawn all the same.
 */
export function chartXml(source: Source, block: ChartBlock, size: Size): string {
  const { plot, axes, legend } = block.series.every(isBar)
    ? bars(source, block)
    : scatter(source, block);
  return (
    `<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n` +
    `<c:chartSpace xmlns:c="${chartSpace}" xmlns:a="${mainSpace}"><c:roundedCorners val="0"/><c:chart>` +
    `${titled(block.heading, 11, true)}<c:autoTitleDeleted val="0"/>` +
    `<c:plotArea>${layout(block, size, legend !== "")}${plot}${axes}</c:plotArea>${legend}` +
    `<c:plotVisOnly val="0"/><c:dispBlanksAs val="gap"/></c:chart>` +
    `<c:spPr><a:solidFill><a:srgbClr val="FFFFFF"/></a:solidFill><a:ln><a:noFill/></a:ln></c:spPr>${textProperties(9)}</c:chartSpace>`
  );
}

interface Drawn {
  readonly plot: string;
  readonly axes: string;
  readonly legend: string;
}

function bars(source: Source, block: ChartBlock): Drawn {
  const sample = block.series[0]?.y;
  return {
    plot: barPlot(source, block.series, axesNamed),
    axes:
      nameAxis() +
      valueAxis({
        ...axis(source.model, block, "up", sample),
        side: "b",
        title: axisTitle(source.model, block.across, sample),
      }),
    legend: block.series.length > 1 ? legendWithout([]) : "",
  };
}

function scatter(source: Source, block: ChartBlock): Drawn {
  const { xml, count, unlisted } = scatterSeries(source, block.series);
  const [sample] = block.series;
  return {
    plot: `<c:scatterChart><c:scatterStyle val="lineMarker"/><c:varyColors val="0"/>${xml}${axesNamed}</c:scatterChart>`,
    axes:
      valueAxis(axis(source.model, block, "across", sample?.x)) +
      valueAxis(axis(source.model, block, "up", sample?.y)),
    legend: unlisted.length < count ? legendWithout(unlisted) : "",
  };
}

function axis(model: Model, block: ChartBlock, which: "across" | "up", sample?: string): Axis {
  const [id, crossing, side] =
    which === "across"
      ? ([axisIds.across, axisIds.up, "b"] as const)
      : ([axisIds.up, axisIds.across, "l"] as const);
  return {
    id,
    crossing,
    side,
    title: axisTitle(model, block[which], sample),
    format: axisFormat(model, sample),
    hidden: block.without?.includes(which) ?? false,
    ...(block.series.every(isBar)
      ? ({ stands: "max", between: "between" } as const)
      : ({ stands: "min", between: "midCat" } as const)),
  };
}

/** `Head, ft`: the title of an axis with the unit of the first series' cells. */
function axisTitle(model: Model, title: string, name: string | undefined): string {
  const [sample] = name === undefined ? [] : cellsOf(model, name);
  const unit = sample === undefined ? "" : shownUnit(sample.declaration, model.system);
  return [title, unit].filter(Boolean).join(", ");
}

function axisFormat(model: Model, name: string | undefined): string {
  const [sample] = name === undefined ? [] : cellsOf(model, name);
  if (sample === undefined || sample.declaration.quantity.kind !== "number") return "General";
  return unitOf(sample.declaration.quantity, model.system).name === "$" ? `"$"#,##0` : "General";
}

/** A legend at the foot, without the series of these places. */
function legendWithout(unlisted: readonly number[]): string {
  const left = unlisted.map(
    (i) => `<c:legendEntry><c:idx val="${i}"/><c:delete val="1"/></c:legendEntry>`,
  );
  return `<c:legend><c:legendPos val="b"/>${left.join("")}<c:overlay val="0"/>${textProperties(9)}</c:legend>`;
}

/** Room around the drawn area, in points: for title, axis titles and figures, legend. */
const room = { left: 62, right: 24, top: 30, bottom: 44, legend: 24 } as const;
/** And beside an axis that is not shown. */
const roomWithout = 10;

/** The drawn area in the middle of its room, with the wanted ratio of width to height. */
function layout(block: ChartBlock, { width, height }: Size, hasLegend: boolean): string {
  const { ratio, without = [] } = block;
  if (besideBars(block)) {
    const [wide, tall] = [width - beside.left - beside.right, height - room.top - beside.bottom];
    return placed(beside.left / width, room.top / height, wide / width, tall / height);
  }
  if (ratio === undefined) return "<c:layout/>";
  const before = without.includes("up") ? roomWithout : room.left;
  const below = without.includes("across") ? roomWithout : room.bottom;
  const [most, tall] = [
    width - before - room.right,
    height - room.top - below - (hasLegend ? room.legend : 0),
  ];
  const wide = Math.min(most, tall * ratio);
  const left = before + (most - wide) / 2;
  return placed(left / width, room.top / height, wide / width, wide / ratio / height);
}

/** Room around bars whose figures stand behind their ends: names at the left, the longest bar's figure at the right. */
const beside = { left: 92, right: 52, bottom: 12 } as const;

/** Bars with their figures behind their ends, on an axis that need not be shown. */
const besideBars = ({ series, without = [] }: ChartBlock): boolean =>
  series.every(({ marks, says }) => marks === "bars" && says === true) && without.includes("up");

/** The drawn area, in shares of the chart. */
function placed(x: number, y: number, w: number, h: number): string {
  const share = (part: number) => Math.round(part * 10000) / 10000;
  const at = `<c:x val="${share(x)}"/><c:y val="${share(y)}"/>`;
  const extent = `<c:w val="${share(w)}"/><c:h val="${share(h)}"/>`;
  return `<c:layout><c:manualLayout><c:layoutTarget val="inner"/><c:xMode val="edge"/><c:yMode val="edge"/>${at}${extent}</c:manualLayout></c:layout>`;
}
