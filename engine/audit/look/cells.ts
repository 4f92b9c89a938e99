import type { CellValue } from "../../workbook/read/content.js";
import type { CellLook } from "../../workbook/read/look/content.js";
import { writeAgain } from "../cures.js";
import type { Finding } from "../finding.js";
import { grouped, short } from "../subject.js";
import { type LookPair, lookFinding } from "./compared.js";
import { printedForm } from "./format/code.js";
import { misreading, type Reading, readOtherwise } from "./format/reading.js";
import { shownBy } from "./format/shown.js";
import { legible } from "./legible.js";

/** Points below which nobody reads a text. */
const leastSize = 6;
/** Points above which a text that was written smaller has no room in its cell. */
const mostSize = 24;
/** More characters than this need more than one line, or stand in cells joined for them. */
const longText = 60;
/** Steps of indent that push a text out of its cell. */
const farIndent = 8;
const signs = /wingdings|webdings|symbol|dingbats|marlett|barcode|blank|redact/i;
/** LibreOffice gives a formula without a format that of the cells it reads. */
const inherited = /^[#,]*0(\.0+)?$/;
const outOfSight = "which nobody sees";
const plain: CellLook = { format: "General", indent: 0 };

/** Cells that print another figure than their value, or whose text cannot be seen. */
export function checkCellLooks(pair: LookPair): Finding[] {
  const { found, nowBook, thenBook } = pair;
  const formats: Finding[] = [];
  const misread: Finding[] = [];
  const unseen: Finding[] = [];
  // few looks stand in thousands of cells
  const known = new Map<number | undefined, Map<number, Change[]>>();
  for (const { address, now, then } of pair.shown) {
    const { value, formula, style = 0 } = now;
    const isText = typeof value === "string";
    const long = isText && value.length > longText;
    const calculated = formula !== undefined;
    const from = known.get(then.style) ?? new Map<number, Change[]>();
    known.set(then.style, from);
    const changes = from.get(style) ?? [];
    from.set(style, changes);
    const kind = (isText ? 1 : 0) + (long ? 2 : 0) + (calculated ? 4 : 0);
    let change = changes[kind];
    if (change === undefined) {
      const here = nowBook.styles.cells[style] ?? plain;
      const there = thenBook.styles.cells[then.style ?? 0] ?? plain;
      change = changeOf(here, there, { isText, long, calculated });
      changes[kind] = change;
    }
    const where = () => `${found.name}!${address}`;
    if (change.format !== undefined) {
      const [is, was] = change.format;
      const read =
        value === null || typeof value === "object" ? undefined : readOtherwise(value, is, was);
      const found = formatFinding(where(), is, was, read);
      (read === undefined ? formats : misread).push(found);
    }
    const trouble = change.trouble ?? runsOf(now.uneven, then.uneven);
    if (trouble === undefined) continue;
    const form = (thenBook.styles.cells[then.style ?? 0] ?? plain).format;
    unseen.push(unseenFinding(pair, where(), trouble, wordsIn(value, form)));
  }
  return [...grouped(misread, 3), ...grouped(formats, 3), ...grouped(unseen, 3)];
}

/** What a person would read there, in quotes; empty for an error. */
const wordsIn = (value: CellValue, format: string): string =>
  typeof value === "string" || typeof value === "number"
    ? `: ${JSON.stringify(short(shownBy(format, value).trim(), 120))}`
    : "";

/** A text out of sight on a page that is handed out is as one that was taken out. */
const unseenFinding = (
  { handout }: LookPair,
  where: string,
  trouble: string,
  words: string,
): Finding =>
  lookFinding(where, trouble + words, "a text that can be read", {
    grade: handout && trouble.endsWith(outOfSight) ? "wrong" : "doubtful",
  });

/** Another number format; wrong where another figure is read by it than the cell holds. */
function formatFinding(where: string, is: string, was: string, read: Reading | undefined): Finding {
  const [now, then] = [is, was].map((one) => `the number format ${short(one, 60)}`) as [
    string,
    string,
  ];
  const code = "number-format" as const;
  if (read === undefined) return lookFinding(where, now, then, { code });
  return lookFinding(where, `${now} ${misreading(read)}`, then, {
    grade: "wrong",
    code,
    advice: `Whoever reads the cell reads another figure than it holds. ${writeAgain}`,
  });
}

/** What a change of look does to a cell. */
interface Change {
  /** The number format as it is and as it was, where they print otherwise. */
  readonly format: readonly [string, string] | undefined;
  readonly trouble: string | undefined;
}

function changeOf(
  here: CellLook,
  there: CellLook,
  { isText, long, calculated }: { isText: boolean; long: boolean; calculated: boolean },
): Change {
  const passedOn = there.format === "General" && calculated && inherited.test(here.format);
  const same = passedOn || printedForm(here.format, isText) === printedForm(there.format, isText);
  return {
    format: same ? undefined : [here.format, there.format],
    trouble: troubleOf(here, there) ?? setOf(here, there, long),
  };
}

function troubleOf(here: CellLook, there: CellLook): string | undefined {
  if (!legible(here.ink, here.fill) && legible(there.ink, there.fill)) {
    return `text of the colour ${here.ink ?? "000000"} on ${here.fill ?? "FFFFFF"}, ${outOfSight}`;
  }
  if (here.size !== undefined && here.size < leastSize && (there.size ?? 10) >= leastSize) {
    return `text of ${here.size} points, which nobody reads`;
  }
  if (here.size !== undefined && here.size > mostSize && here.size > 2 * (there.size ?? 10)) {
    return `text of ${here.size} points, for which its cell has no room`;
  }
  if (here.struck && !there.struck) return "text that is struck out";
  if (here.crossed && !there.crossed) return "a cell crossed out by a line";
  if (signs.test(here.typeface ?? "") && !signs.test(there.typeface ?? "")) {
    return `text in the typeface ${short(here.typeface ?? "", 40)}, which shows signs for letters`;
  }
  if (here.indent > there.indent + farIndent) return "text pushed away from its cell's edge";
  return undefined;
}

/** How the text is set in its cell. */
function setOf(here: CellLook, there: CellLook, long: boolean): string | undefined {
  if (here.turned !== undefined && there.turned === undefined) {
    return here.turned === 255 ? "text of letters one below another" : "text that is turned";
  }
  if (here.repeated && !there.repeated) return "a figure or text shown again and again in its cell";
  if (here.rightToLeft && !there.rightToLeft) return "text that runs from right to left";
  if (long && there.wraps && !here.wraps) return "a text that is cut at its first line";
  return undefined;
}

const runsOf = (now: true | undefined, then: true | undefined): string | undefined =>
  now && !then ? "text of which a part is tiny, pale, struck or raised" : undefined;
