import { strFromU8, unzipSync } from "fflate";
import { expect } from "vitest";
import type { Value } from "../../engine/formula/value.js";
import type { Model } from "../../engine/template/model.js";
import { partsOf } from "../../engine/workbook/write/book/parts.js";
import { Charts } from "../../engine/workbook/write/charts/add.js";
import { writeThroughExceljs } from "../../engine/workbook/write/exceljs/write.js";
import type { Identity } from "../../engine/workbook/write/identity.js";
import { bookOf } from "../../engine/workbook/write/lay-out.js";
import { propertiesOf } from "../../engine/workbook/write/own-properties.js";

/**
 * Holds the parts of a job's workbook against what exceljs makes of the same layout: an
 * independent writer of the same format. What is left out of the comparison, and why, stands in `alike`.
 */
export async function mustBeAsExceljs(
  model: Model,
  values: readonly Value[],
  identity: Identity,
): Promise<void> {
  const { book, places } = bookOf(model, values, identity);
  const charts = new Charts({ model, values }, places);
  const own = alike(partsOf(book, propertiesOf(model, values, identity), charts));
  const packed = await writeThroughExceljs(model, values, identity);
  const other = alike(
    Object.entries(unzipSync(packed)).map(([name, part]) => [name, strFromU8(part)] as const),
  );
  expect([...own.keys()]).toEqual([...other.keys()]);
  for (const [name, xml] of own) {
    // not by toBe: of parts so long, telling the difference takes minutes
    if (xml !== other.get(name)) expect(aroundDifference(xml, other.get(name) ?? "")).toEqual([]);
  }
}

function aroundDifference(own: string, other: string): string[] {
  const at = [...own].findIndex((letter, i) => letter !== other[i]);
  return [own, other].map((xml) => xml.slice(Math.max(0, at - 100), at + 100));
}

function alike(parts: Iterable<readonly [string, string]>): Map<string, string> {
  const all = [...parts];
  const unseen = unseenLooks(all.find(([name]) => name === "xl/styles.xml")?.[1] ?? "");
  const said = all.map(([name, given]): [string, string] => {
    // exceljs escapes quotes where XML does not ask for it
    const xml = given
      .replaceAll("&apos;", "'")
      .replaceAll(/>[^<]+</g, (text) => text.replaceAll("&quot;", '"'));
    // exceljs adds styles for a feature of one program, which a bid has no use for
    if (name === "xl/styles.xml") return [name, xml.replace(/<extLst>.*<\/extLst>/, "")];
    // exceljs takes a width of nine digits for no width at all, though programs use another one then
    if (!name.startsWith("xl/worksheets/sheet")) return [name, xml];
    const widths = xml.replaceAll(/<col [^>]*width="9"[^>]*\/>/g, "");
    // exceljs writes empty cells that show nothing
    const cells = widths.replaceAll(/<c r="[A-Z]+\d+"(?: s="(\d+)")?\/>/g, (cell, look = "0") =>
      unseen.has(look) ? "" : cell,
    );
    return [name, cells.replaceAll(/<row ([^>]*)><\/row>/g, "<row $1/>")];
  });
  return new Map(said.sort(([a], [b]) => (a < b ? -1 : 1)));
}

/** The places of the looks that draw neither box nor tint, and whose cells are locked. */
function unseenLooks(styles: string): ReadonlySet<string> {
  const [, looks = ""] = /<cellXfs[^>]*>(.*)<\/cellXfs>/.exec(styles) ?? [];
  const all = looks.match(/<xf [^>]*\/>|<xf .*?<\/xf>/g) ?? [];
  const isUnseen = (look: string) =>
    look.includes('fillId="0"') && look.includes('borderId="0"') && !look.includes('locked="0"');
  return new Set(all.flatMap((look, i) => (isUnseen(look) ? [String(i)] : [])));
}
