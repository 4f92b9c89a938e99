import { addressOf } from "../../workbook/read/address.js";
import type { Area } from "../../workbook/read/area.js";
import type { SheetLook } from "../../workbook/read/look/content.js";
import { booleanOf } from "../../workbook/read/text.js";
import type { Finding } from "../finding.js";
import { printAreas, printDefinitions, within } from "../printed-part.js";
import type { SheetPair } from "../sheet-pairs.js";
import { short } from "../subject.js";
import { type LookPair, lookFinding } from "./compared.js";
import { titles } from "./repeated.js";

/** What is printed, what stands in the margins, and how the page and the screen are set. */
export function checkPage(pair: LookPair): Finding[] {
  return [printed, margins, settings, room, frozen, breaks, titles].flatMap((look) => look(pair));
}

const saidAreas = (areas: readonly Area[] | undefined): string =>
  areas === undefined
    ? "the whole sheet is printed"
    : `printed: ${areas.map(({ from, to }) => `${addressOf(from)}:${addressOf(to)}`).join(", ")}`;

/** Cells that would print and do not, and cells that print and should not. */
function printed(pair: LookPair): Finding[] {
  const { found, fresh, content, freshContent, map } = pair;
  const now = printAreas(content, found.name);
  const then = printAreas(freshContent, fresh.name);
  if (map.still && saidAreas(now) === saidAreas(then)) return [];
  const { shown } = pair;
  const definitions = printDefinitions(content, found.name);
  const missing = shown.filter(
    ({ at, home }) => within(then, home) && !definitions.every((one) => within(one, at)),
  );
  const more = shown.filter(({ at, home }) => within(now, at) && !within(openBelow(then), home));
  const first = missing[0] ?? more[0];
  if (first === undefined) return [];
  // written while nothing was typed there: what is typed since prints once the bid is written again
  if (pair.awaited && !shown.some(({ at }) => within(now, at))) {
    const advice = "Take the workbook and bid again: from then on this sheet prints.";
    const sheet = `sheet ${found.name}`;
    return [lookFinding(sheet, "not printed yet", saidAreas(then), { grade: "to know", advice })];
  }
  const what =
    missing.length > 0
      ? `${missing.length} cells that show something are left out, ${addressOf(first.at)} first`
      : `${more.length} cells more, ${addressOf(first.at)} first`;
  return [
    lookFinding(`sheet ${found.name}`, `${saidAreas(now)}; ${what}`, saidAreas(then), {
      advice: "Set the print area again: a reader of the paper sees what is in it, and no more.",
    }),
  ];
}

/** A page may end further down than it was written: lines that an edit adds are printed too. */
const openBelow = (areas: readonly Area[] | undefined): readonly Area[] | undefined =>
  areas?.map(({ from, to }) =>
    to.row <= 3 ? { from, to } : { from, to: { ...to, row: Number.MAX_SAFE_INTEGER } },
  );

/** The texts of a margin by its three places, with typeface, size and colour left out. */
function marginText(text: string): string {
  const bare = text
    .replace(/&"[^"]*"/g, "")
    .replace(/&K[0-9A-Fa-f]{6}/g, "")
    .replace(/&(?:\d{1,3}|[BIUESXYOH])/g, "");
  const parts = bare.split(/&([LCR])/);
  const said = new Map<string, string>([["C", (parts[0] ?? "").trim()]]);
  for (let i = 1; i < parts.length; i += 2) {
    said.set(parts[i] as string, (parts[i + 1] ?? "").trim());
  }
  return ["L", "C", "R"].map((place) => said.get(place) ?? "").join(" | ");
}

function margins({ found, now, then }: LookPair): Finding[] {
  const on = (name: string) => booleanOf(now.settings.get(`headerFooter.${name}`)) === true;
  const places = [
    "oddHeader",
    "oddFooter",
    ...(on("differentFirst") ? ["firstHeader", "firstFooter"] : []),
    ...(on("differentOddEven") ? ["evenHeader", "evenFooter"] : []),
  ];
  return places.flatMap((place) => {
    const wanted = then.margins.get(place.replace(/^(first|even)/, "odd")) ?? "";
    const [is, was] = [marginText(now.margins.get(place) ?? ""), marginText(wanted)];
    if (is === was) return [];
    const part = place.endsWith("Header") ? "head" : "foot";
    return [
      lookFinding(
        `sheet ${found.name}, ${part} of the page`,
        `"${short(is, 100)}" is printed`,
        `"${short(was, 100)}"`,
      ),
    ];
  });
}

/** Less than this, in per cent, is not read on paper. */
const leastScale = 40;

function settings({ found, now, then }: LookPair): Finding[] {
  const findings: Finding[] = [];
  const tell = (what: string, expected: string) =>
    findings.push(lookFinding(`sheet ${found.name}`, what, expected));
  const differs = (key: string, test: (value: string | undefined) => boolean) =>
    test(now.settings.get(key)) && !test(then.settings.get(key));
  const off = (value: string | undefined) => value !== undefined && booleanOf(value) === false;
  const on = (value: string | undefined) => booleanOf(value) === true;
  if (differs("sheetView.showZeros", off)) tell("zeros are not shown", "zeros shown");
  if (differs("sheetView.showFormulas", on)) tell("formulas are shown for values", "values shown");
  if (differs("sheetView.rightToLeft", on)) tell("columns run from right to left", "left to right");
  if (differs("pageSetup.errors", (one) => one !== undefined && one !== "displayed")) {
    tell("errors in cells are not printed", "errors printed");
  }
  if (differs("pageSetup.draft", on)) tell("charts and pictures are not printed", "all printed");
  if (differs("pageSetup.cellComments", (one) => one === "atEnd")) {
    tell("the notes of the cells are printed", "no notes on paper");
  }
  const zoom = Number(now.settings.get("sheetView.zoomScale") ?? 100);
  if (zoom > 0 && zoom < leastScale) tell(`shown at ${zoom} %`, "a size that can be read");
  const fitted = on(now.settings.get("pageSetUpPr.fitToPage"));
  const scale = Number(now.settings.get("pageSetup.scale") ?? 100);
  if (!fitted && scale < leastScale) tell(`printed at ${scale} %`, "a size that can be read");
  return findings;
}

/** Inches of a margin beyond which hardly anything is left of a page. */
const mostMargin = { left: 3, right: 3, top: 4, bottom: 4 };
/** Lines on one page beyond which nobody reads them. */
const mostLines = 80;

/** Is a sheet fitted to so many pages, where it would not be as it is filled in now? */
export const isRefitted = (pairs: readonly SheetPair[]): boolean =>
  pairs.some(({ found: { look: now }, fresh: { look: then } }) => {
    const pages = now === undefined ? 0 : pagesDown(now);
    return pages > 0 && then !== undefined && pagesDown(then) !== pages;
  });

/**
 * The room that is left of a page: wide margins, and all lines squeezed onto few pages. A page handed out of a job that
 * was just begun is written as fitted to its pages, which is only to know.
 */
function room(pair: LookPair): Finding[] {
  const { found, now, then, written } = pair;
  const tell = (what: string, expected: string, more: Partial<Finding> = {}) =>
    lookFinding(`sheet ${found.name}`, what, expected, more);
  const wide = Object.entries(mostMargin).flatMap(([side, most]) => {
    const of = (one: typeof now) => Number(one.settings.get(`pageMargins.${side}`) ?? 0);
    if (of(now) < most || of(then) >= most) return [];
    return [tell(`a margin of ${of(now)} in on the ${side}`, `${of(then)} in`)];
  });
  const pages = pagesDown(now);
  if (pages === 0 || pagesDown(then) === pages) return wide;
  const last = Math.max(0, ...pair.shown.map(({ at }) => at.row));
  if (last <= mostLines * pages) return wide;
  const expected = "lines that can be read";
  if (written !== undefined && pagesDown(written) === pages) {
    const what = `${last} lines on ${pages} pages, fitted to them as written`;
    const advice = "Take the workbook and bid again: the pages are laid out for what they say now.";
    return [...wide, tell(what, expected, { grade: "to know", advice })];
  }
  return [...wide, tell(`${last} lines squeezed onto ${pages} pages`, expected)];
}

/** How many pages a sheet is fitted to from top to bottom; 0 for as many as it takes. */
function pagesDown({ settings: set }: SheetLook): number {
  if (booleanOf(set.get("pageSetUpPr.fitToPage")) !== true) return 0;
  return Number(set.get("pageSetup.fitToHeight") ?? 1);
}

/** Lines frozen at the top beyond which a screen shows nothing else. */
const mostFrozen = 30;

/** Panes that keep lines or columns out of sight, however far one scrolls. */
function frozen({ found, now, then }: LookPair): Finding[] {
  const tell = (what: string) => [lookFinding(`sheet ${found.name}`, what, "all within reach")];
  if (!/^frozen/.test(now.settings.get("pane.state") ?? "")) return [];
  const first = now.settings.get("sheetView.topLeftCell") ?? "A1";
  const before = then.settings.get("sheetView.topLeftCell") ?? "A1";
  if (first !== "A1" && first !== before) {
    return tell(
      `the screen is frozen at ${first}: what stands above or left of it is out of reach`,
    );
  }
  const lines = Number(now.settings.get("pane.ySplit") ?? 0);
  if (lines <= mostFrozen || lines <= Number(then.settings.get("pane.ySplit") ?? 0)) return [];
  return tell(`${lines} lines are frozen at the top, which hides those below them`);
}

/** Pages that a person had begin elsewhere: a line must not be torn apart. */
function breaks({ found, now, then }: LookPair): Finding[] {
  const where = `sheet ${found.name}`;
  const torn = now.breaks.columns.length > then.breaks.columns.length;
  const more = now.breaks.rows.length - then.breaks.rows.length;
  return [
    ...(torn
      ? [lookFinding(where, "a new page begins between two columns", "lines in one piece")]
      : []),
    ...(more > 0
      ? [
          lookFinding(where, `${more} page breaks more than written`, "pages as written", {
            grade: "to know",
            advice: "Nothing: every line is printed.",
          }),
        ]
      : []),
  ];
}
