import { addressOf, type Position, positionOf } from "../../workbook/read/address.js";
import type { DrawnChart, DrawnSeries } from "../../workbook/read/look/charts.js";
import type { SheetLook } from "../../workbook/read/look/content.js";
import type { Finding } from "../finding.js";
import { short } from "../subject.js";
import { type LookPair, lookFinding } from "./compared.js";
import { checkKeptPoints } from "./kept-points.js";

/**
 * Charts that are gone or were put in, draw other cells, name them otherwise, or cut their axes. Lines and sheets
 * that moved are followed, as a spreadsheet moves what its charts refer to.
 */
export function checkCharts(pair: LookPair, all: readonly LookPair[]): Finding[] {
  const { found, now, then } = pair;
  const [is, was] = [framesIn(now), framesIn(then)];
  const what =
    is === was
      ? difference(now.charts, then.charts, all)
      : is < was
        ? `${was - is} charts are gone`
        : `${is - was} charts were put in`;
  if (what === undefined) return checkKeptPoints(pair);
  const expected = is === was ? "the template's charts" : `${was} charts`;
  return [lookFinding(`sheet ${found.name}`, what, expected, { code: "drawn" })];
}

/** Charts, and what else a program draws in a frame. */
const framesIn = ({ drawn }: SheetLook): number =>
  drawn.filter(({ kind }) => kind === "graphicFrame").length;

function difference(
  now: readonly DrawnChart[],
  then: readonly DrawnChart[],
  all: readonly LookPair[],
): string | undefined {
  const drawn = surplus(
    now.flatMap(({ series }) => series.map(plain)),
    then.flatMap(({ series }) => series.map((one) => plain(moved(one, all)))),
  );
  if (drawn !== undefined) return `a chart draws ${drawn}`;
  const titled = surplus(titlesOf(now), titlesOf(then));
  if (titled !== undefined) return `a chart or an axis is titled ${titled}`;
  const ended = surplus(endsOf(now), endsOf(then));
  if (ended !== undefined) return `an axis is cut at its ${ended}`;
  const way = surplus(waysOf(now), waysOf(then));
  return way === undefined || way === fewer
    ? undefined
    : `an axis, or what is said along it, ${way}`;
}

const waysOf = (charts: readonly DrawnChart[]) => charts.flatMap(({ ways }) => ways);
const titlesOf = (charts: readonly DrawnChart[]) =>
  charts.flatMap(({ titles }) => titles.map((one) => one.replace(/\s+/g, " ").trim()));
const endsOf = (charts: readonly DrawnChart[]) => charts.flatMap(({ ends }) => ends);

const fewer = "fewer cells";

/** The first that is there more often than it should be; where one should be and nothing stands for it, that. */
function surplus(now: readonly string[], then: readonly string[]): string | undefined {
  const left = [...then];
  for (const one of now) {
    const at = left.indexOf(one);
    if (at < 0) return short(one, 80);
    left.splice(at, 1);
  }
  return left.length === 0 ? undefined : fewer;
}

/** A series as one text: `running: drawing points!a1:a5, drawing points!b1:b5`. */
function plain({ name, cells }: DrawnSeries): string {
  // LibreOffice may store a single cell as `$B$4:$B$4`
  const areas = cells
    .map((one) => one.replace(/[$']/g, "").replace(/!([A-Z]+\d+):\1$/i, "!$1"))
    .join(", ");
  return `${name === "" ? "" : `${name}: `}${areas}`.toLowerCase();
}

/** A series of the template with its cells where they stand now. */
const moved = ({ name, cells }: DrawnSeries, all: readonly LookPair[]): DrawnSeries => ({
  name,
  cells: cells.map((one) => movedArea(one, all)),
});

function movedArea(area: string, all: readonly LookPair[]): string {
  const [, sheet, from = "", to = from] = /^'(.*)'!([$A-Z\d]+)(?::([$A-Z\d]+))?$/.exec(area) ?? [];
  const pair = all.find(({ fresh }) => fresh.name === sheet);
  const corners = [from, to].map((one) => {
    const at = positionOf(one.replaceAll("$", ""));
    return at === undefined ? undefined : pair?.map.to(at);
  });
  const [first, last] = corners;
  if (pair === undefined || first === undefined || last === undefined) return area;
  const written = (at: Position) => addressOf(at);
  const end = to === from ? "" : `:${written(last)}`;
  return `'${pair.found.name}'!${written(first)}${end}`;
}
