import { addressOf } from "../../workbook/read/address.js";
import type { CellLook } from "../../workbook/read/look/content.js";
import type { Finding } from "../finding.js";
import { grouped, short } from "../subject.js";
import { type LookPair, lookFinding, shownCells } from "./compared.js";
import { printedForm } from "./format-code.js";
import { legible } from "./legible.js";

/** Points below which nobody reads a text. */
const leastSize = 6;
/** More characters than this need more than one line, or stand in cells joined for them. */
const longText = 60;
/** Steps of indent that push a text out of its cell. */
const farIndent = 8;
const signs = /wingdings|webdings|symbol|dingbats|marlett|barcode|blank|redact/i;
/** LibreOffice gives a formula without a format that of the cells it reads. */
const inherited = /^[#,0.]+$/;
const plain: CellLook = { format: "General", indent: 0 };

/** Cells that print another figure than their value, or whose text cannot be seen. */
export function checkCellLooks(pair: LookPair): Finding[] {
  const { found, nowBook, thenBook } = pair;
  const formats: Finding[] = [];
  const unseen: Finding[] = [];
  for (const { at, now, then } of shownCells(pair)) {
    const where = `${found.name}!${addressOf(at)}`;
    const here = nowBook.styles.cells[now.style ?? 0] ?? plain;
    const there = thenBook.styles.cells[then.style ?? 0] ?? plain;
    const isText = typeof now.value === "string";
    const passedOn = there.format === "General" && now.formula && inherited.test(here.format);
    if (!passedOn && printedForm(here.format, isText) !== printedForm(there.format, isText)) {
      const [is, was] = [here, there].map(({ format }) => `the number format ${short(format, 60)}`);
      formats.push(lookFinding(where, is as string, was as string, { code: "number-format" }));
    }
    const long = isText && String(now.value).length > longText;
    const trouble =
      troubleOf(here, there) ?? setOf(here, there, long) ?? runsOf(now.uneven, then.uneven);
    if (trouble !== undefined) unseen.push(lookFinding(where, trouble, "a text that can be read"));
  }
  return [...grouped(formats, 3), ...grouped(unseen, 3)];
}

function troubleOf(here: CellLook, there: CellLook): string | undefined {
  if (!legible(here.ink, here.fill) && legible(there.ink, there.fill)) {
    return `text of the colour ${here.ink ?? "000000"} on ${here.fill ?? "FFFFFF"}, which nobody sees`;
  }
  if (here.size !== undefined && here.size < leastSize && (there.size ?? 10) >= leastSize) {
    return `text of ${here.size} points, which nobody reads`;
  }
  if (here.struck && !there.struck) return "text that is struck out";
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
