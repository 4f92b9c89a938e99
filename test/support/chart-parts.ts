import { strFromU8, unzipSync } from "fflate";
import { SaxesParser } from "saxes";
import { order } from "./chart-order.js";

/** An element of a chart or drawing, by local name. */
export interface Element {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly inside: Element[];
  text: string;
}

/** A part of XML as a tree; throws where it is not well-formed. */
export function parsed(xml: string): Element {
  const top: Element = { name: "", attributes: {}, inside: [], text: "" };
  const stack = [top];
  const parser = new SaxesParser({ xmlns: true });
  parser.on("error", (error) => {
    throw error;
  });
  parser.on("opentag", ({ local, attributes }) => {
    const plain = Object.fromEntries(
      Object.values(attributes).map(({ name, value }) => [name, value]),
    );
    const element = { name: local, attributes: plain, inside: [], text: "" };
    stack.at(-1)?.inside.push(element);
    stack.push(element);
  });
  parser.on("text", (text) => {
    (stack.at(-1) as Element).text += text;
  });
  parser.on("closetag", () => stack.pop());
  parser.write(xml).close();
  return top.inside[0] as Element;
}

/** All elements of a name within another one, in the order of the file. */
export const within = (element: Element, name: string): Element[] =>
  element.inside.flatMap((one) => [...(one.name === name ? [one] : []), ...within(one, name)]);

export const child = (element: Element | undefined, name: string): Element | undefined =>
  element?.inside.find((one) => one.name === name);

/** The charts of a workbook by their part's name. */
export function chartsIn(bytes: Uint8Array): Map<string, Element> {
  const parts = unzipSync(bytes, {
    filter: ({ name }) => /^xl\/charts\/chart\d+\.xml$/.test(name),
  });
  return new Map(Object.entries(parts).map(([name, part]) => [name, parsed(strFromU8(part))]));
}

/** The drawings of a workbook by their part's name. */
export function drawingsIn(bytes: Uint8Array): Map<string, Element> {
  const parts = unzipSync(bytes, { filter: ({ name }) => /^xl\/drawings\/[^/]+\.xml$/.test(name) });
  return new Map(Object.entries(parts).map(([name, part]) => [name, parsed(strFromU8(part))]));
}

/** The title of a chart, as it is read. */
export const titleOf = (chart: Element): string =>
  within(child(child(chart, "chart"), "title") ?? chart, "t")
    .map(({ text }) => text)
    .join("");

/** A reference of a chart to cells with what it has cached of them, by place. */
export interface Cached {
  readonly formula: string;
  readonly count: number;
  readonly points: ReadonlyMap<number, string>;
}

/** All references of a chart: names of series, categories, points. */
export const cachedIn = (chart: Element): Cached[] =>
  [...within(chart, "numRef"), ...within(chart, "strRef")].map((reference) => {
    const cache = child(reference, "numCache") ?? child(reference, "strCache");
    const points = cache?.inside.filter(({ name }) => name === "pt") ?? [];
    return {
      formula: child(reference, "f")?.text ?? "",
      count: Number(child(cache, "ptCount")?.attributes.val ?? 0),
      points: new Map(
        points.map((one) => [Number(one.attributes.idx), child(one, "v")?.text ?? ""]),
      ),
    };
  });

/** Each chart as its title and number of series, in a fixed order. */
export const drawnCharts = (bytes: Uint8Array): string[] =>
  [...chartsIn(bytes).values()]
    .map((chart) => `${titleOf(chart).trim()}: ${within(chart, "ser").length}`)
    .sort();

/** The areas that the charts draw, each as often as it is drawn. */
export const drawnAreas = (bytes: Uint8Array): string[] =>
  [...chartsIn(bytes).values()]
    .flatMap(cachedIn)
    .map(({ formula }) => formula.replace(/[$']/g, ""))
    .filter((formula) => !formula.startsWith('"'))
    .sort();

/** Elements that the standard does not know there, or has in another order. */
export function misplaced(element: Element, path = element.name): string[] {
  const allowed = order[element.name];
  const faults: string[] = [];
  if (allowed !== undefined) {
    let last = 0;
    for (const { name } of element.inside) {
      const at = allowed.indexOf(name);
      if (at < 0) faults.push(`${path}: no ${name} stands there`);
      else if (at < last) faults.push(`${path}: ${name} comes before ${allowed[last]}`);
      last = Math.max(last, at);
    }
  }
  return [...faults, ...element.inside.flatMap((one) => misplaced(one, `${path}/${one.name}`))];
}
