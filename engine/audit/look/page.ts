import { addressOf } from "../../workbook/read/address.js";
import { booleanOf } from "../../workbook/read/text.js";
import type { Finding } from "../finding.js";
import { type Area, printAreas, within } from "../printed-part.js";
import { short } from "../subject.js";
import { type LookPair, lookFinding, shownCells } from "./compared.js";

/** What is printed, what stands in the margins, and how the page and the screen are set. */
export function checkPage(pair: LookPair): Finding[] {
  return [...printed(pair), ...margins(pair), ...settings(pair), ...titles(pair)];
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
  const shown = shownCells(pair);
  const missing = shown.filter(({ at, home }) => within(then, home) && !within(now, at));
  const more = shown.filter(({ at, home }) => within(now, at) && !within(openBelow(then), home));
  const first = missing[0] ?? more[0];
  if (first === undefined || (map.still && saidAreas(now) === saidAreas(then))) return [];
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
  const fitted = on(now.settings.get("pageSetUpPr.fitToPage"));
  const scale = Number(now.settings.get("pageSetup.scale") ?? 100);
  if (!fitted && scale < leastScale) tell(`printed at ${scale} %`, "a size that can be read");
  return findings;
}

/** Rows or columns that repeat on each page. */
function titles({ found, fresh, content, freshContent }: LookPair): Finding[] {
  const titlesOf = ({ names }: typeof content, sheet: string) =>
    names.find(
      ({ name, scope, text }) =>
        name.toLowerCase() === "_xlnm.print_titles" && scope === sheet && !text.includes("#REF!"),
    );
  const own = titlesOf(content, found.name);
  if (own === undefined || titlesOf(freshContent, fresh.name) !== undefined) return [];
  return [
    lookFinding(
      `sheet ${found.name}`,
      `${short(own.text, 80)} is printed again on each page`,
      "each line printed once",
    ),
  ];
}
