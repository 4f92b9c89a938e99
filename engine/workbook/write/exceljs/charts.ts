import { strFromU8, strToU8 } from "fflate";
import type { Book } from "../book/book.js";
import type { Charts } from "../charts/add.js";
import { linksOf, linksXml, linkXml, relations } from "../xml/links.js";
import { customPart, drawingType, override } from "../xml/types.js";

/** Adds the charts of a book to the parts of its package as exceljs writes them, which knows of none. */
export function withCharts(
  parts: Readonly<Record<string, Uint8Array>>,
  book: Book,
  charts: Charts,
): Record<string, Uint8Array> {
  const added: Record<string, Uint8Array> = { ...parts };
  const change = (name: string, before: string, inserted: string): void => {
    const xml = strFromU8(added[name] ?? new Uint8Array());
    if (!xml.includes(before)) throw new Error(`The part ${name} of exceljs has no ${before}.`);
    added[name] = strToU8(xml.replace(before, () => inserted + before));
  };
  for (const [i, { name }] of book.sheets.entries()) {
    const drawing = charts.drawingOn(name);
    if (drawing === undefined) continue;
    const sheet = `xl/worksheets/sheet${i + 1}.xml`;
    const links = linksOf(sheet);
    const known = added[links] === undefined ? 0 : count(strFromU8(added[links]), "<Relationship ");
    const link = {
      id: `rIdAdded${known + 1}`,
      type: `${relations}/drawing`,
      target: `../drawings/${drawing}`,
    };
    if (known === 0) added[links] = strToU8(linksXml([link]));
    else change(links, "</Relationships>", linkXml(link));
    const hasNotes = strFromU8(added[sheet] ?? new Uint8Array()).includes("<legacyDrawing ");
    change(sheet, hasNotes ? "<legacyDrawing " : "</worksheet>", `<drawing r:id="${link.id}"/>`);
  }
  const types = charts.types.map(({ part, kind }) => override(part, `${drawingType}${kind}+xml`));
  change("[Content_Types].xml", `<Override PartName="${customPart}"`, types.join(""));
  for (const [name, xml] of charts.parts()) added[name] = strToU8(xml);
  return added;
}

const count = (text: string, part: string): number => text.split(part).length - 1;
