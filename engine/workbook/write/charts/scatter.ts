import type { LabelPlace, Series } from "../../../template/declare.js";
import type { Cell } from "../../../template/model.js";
import { escaped } from "../package.js";
import { cellsOf, numbers, type Source, texts } from "./cells.js";
import {
  ink,
  markers,
  solid,
  stroked,
  strokes,
  textProperties,
  unstroked,
  usualLooks,
} from "./looks.js";

const noMarker = `<c:marker><c:symbol val="none"/></c:marker>`;
const placed: Readonly<Record<LabelPlace, string>> = {
  above: "t",
  below: "b",
  left: "l",
  right: "r",
  center: "ctr",
};

/** The series of a scatter chart (ISO/IEC 29500-1 §21.2.2.161), and which of them the legend leaves out. */
export function scatterSeries(
  source: Source,
  all: readonly Series[],
): { readonly xml: string; readonly count: number; readonly unlisted: readonly number[] } {
  const drawn: { body: string; listed: boolean }[] = [];
  const marks = all.filter(({ marks: kind }) => kind === "points");
  all.forEach((one, i) => {
    if (one.marks !== "names") {
      const look = one.look ?? usualLooks[i % usualLooks.length];
      const shape =
        one.marks === "line" && look !== undefined
          ? `<c:spPr>${stroked(strokes[look])}</c:spPr>${noMarker}`
          : `<c:spPr>${unstroked}</c:spPr>${one.marks === "frame" ? noMarker : marker(marks.indexOf(one))}`;
      const name = `<c:tx><c:v>${escaped(one.label)}</c:v></c:tx>`;
      const points = coordinates(
        source,
        cellsOf(source.model, one.x),
        cellsOf(source.model, one.y),
      );
      drawn.push({ body: name + shape + points, listed: isListed(one) });
    }
    for (const body of namedPoints(source, one)) drawn.push({ body, listed: false });
  });
  return {
    xml: drawn
      .map(({ body }, i) => `<c:ser><c:idx val="${i}"/><c:order val="${i}"/>${body}</c:ser>`)
      .join(""),
    count: drawn.length,
    unlisted: drawn.flatMap(({ listed }, i) => (listed ? [] : [i])),
  };
}

/** Whether the legend tells of a series. */
export const isListed = ({ marks, legend }: Series): boolean =>
  legend !== false && marks !== "frame" && marks !== "names";

const coordinates = (source: Source, x: readonly Cell[], y: readonly Cell[]): string =>
  `<c:xVal>${numbers(source, x)}</c:xVal><c:yVal>${numbers(source, y)}</c:yVal><c:smooth val="0"/>`;

function marker(place: number): string {
  const symbol = markers[place % markers.length];
  return `<c:marker><c:symbol val="${symbol}"/><c:size val="8"/><c:spPr>${solid(ink)}<a:ln w="9525">${solid("FFFFFF")}</a:ln></c:spPr></c:marker>`;
}

/**
 * A series of one point for each text: its name is the text's cell, and its label shows the name.
 * Labels that read cells of their own are an extension that not every program has.
 */
function namedPoints(source: Source, { x, y, says, at = "above" }: Series): string[] {
  if (typeof says !== "string") return [];
  const { model } = source;
  const [xs, ys] = [cellsOf(model, x), cellsOf(model, y)];
  const label =
    `<c:dLbls><c:spPr>${solid("FFFFFF")}<a:ln><a:noFill/></a:ln></c:spPr>${textProperties(9, { wrapped: false })}<c:dLblPos val="${placed[at]}"/><c:showLegendKey val="0"/><c:showVal val="0"/>` +
    `<c:showCatName val="0"/><c:showSerName val="1"/><c:showPercent val="0"/><c:showBubbleSize val="0"/></c:dLbls>`;
  return cellsOf(model, says).map(
    (text, i) =>
      `<c:tx>${texts(source, [text])}</c:tx><c:spPr>${unstroked}</c:spPr>${noMarker}${label}` +
      coordinates(source, [xs[i] as Cell], [ys[i] as Cell]),
  );
}
