import { drawing } from "../namespaces.js";
import type { Package } from "../package.js";
import type { Attributes } from "../xml.js";

/** A series of a chart: its name, where that is a text of its own, and the cells that it refers to. */
export interface DrawnSeries {
  readonly name: string;
  /** Formulas of areas: of its name, its categories or its points across, its points up. */
  readonly cells: readonly string[];
}

/** What a file keeps of the cells that a chart draws, for programs that show it without calculating. */
export interface KeptPoints {
  /** The formula of their area. */
  readonly area: string;
  /** Numbers, or texts. */
  readonly numeric: boolean;
  /** By place within the area, counted from 0. */
  readonly points: readonly (readonly [place: number, value: string])[];
}

/** What a chart tells its reader. */
export interface DrawnChart {
  /** Its title and those of its axes, in their order. */
  readonly titles: readonly string[];
  readonly series: readonly DrawnSeries[];
  /** Ends of axes that are fixed, such as `min 0`. */
  readonly ends: readonly string[];
  /** Axes that run backwards or count in powers, and formats that print figures of their own. */
  readonly ways: readonly string[];
  readonly kept: readonly KeptPoints[];
}

const mostSeries = 500;
const mostPoints = 10_000;
const end = /\/scaling\/(min|max)$/;

/** Reads what a chart draws (ISO/IEC 29500-1 §21.2): its titles, the cells of its series, the ends of its axes. */
export function readChart(from: Package, part: string): DrawnChart {
  const series: { name: string; cells: string[] }[] = [];
  const [titles, ends, ways]: [string[], string[], string[]] = [[], [], []];
  const kept: { area: string; numeric: boolean; points: [number, string][] }[] = [];
  let [text, area, place, count] = ["", "", Number.NaN, 0];
  from.walk(part, {
    namespaces: drawing,
    root: "chartSpace",
    open(path, attributes) {
      if (/\/f$|\/v$/.test(path)) text = "";
      else if (path.endsWith("/ser") && series.length < mostSeries) {
        series.push({ name: "", cells: [] });
      } else if (path.endsWith("/title") && titles.length < mostSeries) titles.push("");
      const cache = /\/ser\/\w+\/(?:num|str)Ref\/(num|str)Cache(\/pt)?$/.exec(path);
      if (cache?.[2] !== undefined) place = Number(attributes.idx?.value);
      else if (cache && kept.length < mostSeries)
        kept.push({ area, numeric: cache[1] === "num", points: [] });
      const way = wayOf(path, attributes);
      if (way !== undefined && ways.length < mostSeries) ways.push(way);
      const which = end.exec(path)?.[1];
      if (which !== undefined) ends.push(`${which} ${attributes.val?.value ?? ""}`);
    },
    text(path, piece) {
      if (/\/f$|\/v$/.test(path)) text = (text + piece).slice(0, 1000);
      else if (path.includes("/title/") && path.endsWith("/t") && titles.length > 0) {
        titles[titles.length - 1] = ((titles.at(-1) ?? "") + piece).slice(0, 500);
      }
    },
    close(path) {
      const last = series.at(-1);
      if (last === undefined || !path.includes("/ser/")) return;
      if (path.endsWith("/ser/tx/v")) last.name = text;
      else if (path.endsWith("Cache/pt/v")) {
        if (count < mostPoints && Number.isInteger(place)) kept.at(-1)?.points.push([place, text]);
        count += 1;
      } else if (path.endsWith("/f")) {
        area = text;
        // programs write a name of its own as a formula that is a text
        if (text.startsWith('"')) last.name = text.slice(1, -1).replaceAll('""', '"');
        else if (last.cells.length < 10) last.cells.push(text);
      }
    },
  });
  return { titles, series, ends, ways, kept };
}

/** How an element has a chart read otherwise than its figures, in words. */
function wayOf(path: string, { val, formatCode }: Attributes): string | undefined {
  if (path.endsWith("/scaling/orientation") && val?.value === "maxMin") return "runs backwards";
  if (path.endsWith("/scaling/logBase")) return `counts in powers of ${val?.value}`;
  if (!path.endsWith("/numFmt")) return undefined;
  const format = (formatCode?.value ?? "").slice(0, 255);
  const literals = format.match(/"[^"]*"|\\./g) ?? [];
  return literals.some((one) => /\d/.test(one)) ? `prints figures by ${format}` : undefined;
}
