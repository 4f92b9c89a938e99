import { columnLetters } from "../../address.js";
import { CellError, type Value } from "../../formula/value.js";
import type { ChartBlock, Series } from "../../template/declare.js";
import { type Cell, columnOf, type Model } from "../../template/model.js";
import { shownUnit } from "./number-format.js";
import { escaped } from "./package.js";

const chartSpace = "http://schemas.openxmlformats.org/drawingml/2006/chart";
const mainSpace = "http://schemas.openxmlformats.org/drawingml/2006/main";

/** Lines differ by dash and marker as well as by colour, to be told apart in grey print. */
const inks = ["2F5D62", "9C6B1F", "7A3B5E", "4A4A4A"];
const dashes = ["solid", "dash", "sysDot", "lgDashDot"];
const markers = ["circle", "diamond", "square", "triangle"];

/** The DrawingML of a chart (ISO/IEC 29500-1 part 21): its points are references, with values cached. */
export function chartXml(model: Model, values: readonly Value[], block: ChartBlock): string {
  const bars = block.series.every(({ marks }) => marks === "bars");
  const series = block.series
    .map((one, i) => (bars ? barSeries : pointSeries)(model, values, one, i))
    .join("");
  const axes = `<c:axId val="1001"/><c:axId val="1002"/>`;
  const plot = bars
    ? `<c:barChart><c:barDir val="bar"/><c:grouping val="clustered"/><c:varyColors val="0"/>${series}<c:gapWidth val="60"/>${axes}</c:barChart>`
    : `<c:scatterChart><c:scatterStyle val="lineMarker"/><c:varyColors val="0"/>${series}${axes}</c:scatterChart>`;
  const [sample] = block.series;
  const across = titled(model, block.across, bars ? sample?.y : sample?.x);
  const first = bars ? categoryAxis() : valueAxis(1001, 1002, "b", across);
  const second = bars
    ? valueAxis(1002, 1001, "b", across)
    : valueAxis(1002, 1001, "l", titled(model, block.up, sample?.y));
  return (
    `<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n` +
    `<c:chartSpace xmlns:c="${chartSpace}" xmlns:a="${mainSpace}"><c:roundedCorners val="0"/><c:chart>` +
    `<c:autoTitleDeleted val="1"/><c:plotArea><c:layout/>${plot}${first}${second}</c:plotArea>` +
    (bars ? "" : `<c:legend><c:legendPos val="r"/><c:overlay val="0"/></c:legend>`) +
    `<c:plotVisOnly val="1"/><c:dispBlanksAs val="gap"/></c:chart></c:chartSpace>`
  );
}

function pointSeries(model: Model, values: readonly Value[], one: Series, i: number): string {
  const ink = inks[i % inks.length];
  const line =
    one.marks === "line"
      ? `<a:ln w="22225"><a:solidFill><a:srgbClr val="${ink}"/></a:solidFill><a:prstDash val="${dashes[i % dashes.length]}"/></a:ln>`
      : `<a:ln w="19050"><a:noFill/></a:ln>`;
  const marker =
    one.marks === "line"
      ? `<c:marker><c:symbol val="none"/></c:marker>`
      : `<c:marker><c:symbol val="${markers[i % markers.length]}"/><c:size val="9"/><c:spPr><a:solidFill><a:srgbClr val="${ink}"/></a:solidFill></c:spPr></c:marker>`;
  return (
    `<c:ser><c:idx val="${i}"/><c:order val="${i}"/>${seriesName(one)}<c:spPr>${line}</c:spPr>${marker}` +
    `<c:xVal>${numbers(model, values, one.x)}</c:xVal><c:yVal>${numbers(model, values, one.y)}</c:yVal><c:smooth val="0"/></c:ser>`
  );
}

function barSeries(model: Model, values: readonly Value[], one: Series, i: number): string {
  const fill = `<a:solidFill><a:srgbClr val="${inks[i % inks.length]}"/></a:solidFill>`;
  return (
    `<c:ser><c:idx val="${i}"/><c:order val="${i}"/>${seriesName(one)}<c:spPr>${fill}</c:spPr><c:invertIfNegative val="0"/>` +
    `<c:cat>${texts(model, values, one.x)}</c:cat><c:val>${numbers(model, values, one.y)}</c:val></c:ser>`
  );
}

const seriesName = (one: Series): string => `<c:tx><c:v>${escaped(one.label)}</c:v></c:tx>`;

function cellsOf(model: Model, name: string): readonly Cell[] {
  const [table = "", key = ""] = name.split(".");
  return columnOf(model, table, key).cells;
}

/** `Head, ft`: the title of an axis with the unit of the first series' column. */
function titled(model: Model, title: string, column: string | undefined): string {
  const [sample] = column === undefined ? [] : cellsOf(model, column);
  const unit = sample === undefined ? "" : shownUnit(sample.declaration, model.system);
  return [title, unit].filter(Boolean).join(", ");
}

function reference(cells: readonly Cell[]): string {
  const [first, last] = [cells[0] as Cell, cells.at(-1) as Cell];
  const letters = columnLetters(first.column);
  return escaped(`'${first.sheet}'!$${letters}$${first.line}:$${letters}$${last.line}`);
}

function numbers(model: Model, values: readonly Value[], name: string): string {
  const cells = cellsOf(model, name);
  const points = cells.map((cell, i) => {
    const value = values[cell.index];
    return typeof value === "number" ? `<c:pt idx="${i}"><c:v>${value}</c:v></c:pt>` : "";
  });
  return `<c:numRef><c:f>${reference(cells)}</c:f><c:numCache><c:formatCode>General</c:formatCode><c:ptCount val="${cells.length}"/>${points.join("")}</c:numCache></c:numRef>`;
}

function texts(model: Model, values: readonly Value[], name: string): string {
  const cells = cellsOf(model, name);
  const points = cells.map((cell, i) => {
    const value = values[cell.index] ?? "";
    const shown = value instanceof CellError ? value.code : String(value);
    return `<c:pt idx="${i}"><c:v>${escaped(shown)}</c:v></c:pt>`;
  });
  return `<c:strRef><c:f>${reference(cells)}</c:f><c:strCache><c:ptCount val="${cells.length}"/>${points.join("")}</c:strCache></c:strRef>`;
}

function axisTitle(title: string): string {
  const run = `<a:r><a:rPr lang="en-US" sz="900" b="0"/><a:t>${escaped(title)}</a:t></a:r>`;
  return `<c:title><c:tx><c:rich><a:bodyPr/><a:p><a:pPr><a:defRPr sz="900" b="0"/></a:pPr>${run}</a:p></c:rich></c:tx><c:overlay val="0"/></c:title>`;
}

function valueAxis(id: number, crosses: number, position: string, title: string): string {
  const grid = `<c:majorGridlines><c:spPr><a:ln w="6350"><a:solidFill><a:srgbClr val="D5DCDD"/></a:solidFill></a:ln></c:spPr></c:majorGridlines>`;
  return (
    `<c:valAx><c:axId val="${id}"/><c:scaling><c:orientation val="minMax"/></c:scaling><c:delete val="0"/><c:axPos val="${position}"/>${grid}` +
    `${axisTitle(title)}<c:numFmt formatCode="#,##0" sourceLinked="0"/><c:majorTickMark val="out"/><c:minorTickMark val="none"/><c:tickLblPos val="nextTo"/><c:crossAx val="${crosses}"/><c:crosses val="autoZero"/></c:valAx>`
  );
}

/** The first bar stands on top, as the rows do. */
function categoryAxis(): string {
  return `<c:catAx><c:axId val="1001"/><c:scaling><c:orientation val="maxMin"/></c:scaling><c:delete val="0"/><c:axPos val="l"/><c:majorTickMark val="none"/><c:minorTickMark val="none"/><c:tickLblPos val="low"/><c:crossAx val="1002"/><c:crosses val="autoZero"/></c:catAx>`;
}
