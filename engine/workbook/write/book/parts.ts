import type { Charts } from "../charts/add.js";
import { themeXml } from "../document.js";
import type { SpellCells } from "../xml/cells.js";
import { type Link, linksOf, linksXml, relations } from "../xml/links.js";
import { boxesXml, commentsXml, notesOf } from "../xml/notes.js";
import { appXml, coreXml, customRelation, customType, customXml } from "../xml/properties.js";
import { Styles } from "../xml/styles.js";
import { head } from "../xml/text.js";
import { Texts } from "../xml/texts.js";
import { customPart, drawingType, override } from "../xml/types.js";
import { workbookXml } from "../xml/workbook.js";
import { worksheetXml } from "../xml/worksheet.js";
import type { Book } from "./book.js";
import type { Sheet } from "./sheet.js";

type Part = readonly [name: string, xml: string];

const packageRelations = "http://schemas.openxmlformats.org/package/2006/relationships";
const spreadsheet = "application/vnd.openxmlformats-officedocument.spreadsheetml";

/** Relations of the workbook that come before those of its sheets. */
const firstLinks: readonly Link[] = [
  { id: "rId1", type: `${relations}/styles`, target: "styles.xml" },
  { id: "rId2", type: `${relations}/theme`, target: "theme/theme1.xml" },
  { id: "rId3", type: `${relations}/sharedStrings`, target: "sharedStrings.xml" },
];
const sheetLink = (at: number): string => `rId${firstLinks.length + 1 + at}`;

/**
 * The parts of the package that a book is, one after another; the sheets first, since they are most of it and can be
 * packed while the next one is spelled. The same book gives the same parts.
 *
 * @param spellCells another way to spell the cells of a sheet
 */
export function* partsOf(
  book: Book,
  properties: Readonly<Record<string, string>>,
  charts: Charts,
  spellCells?: SpellCells,
): Generator<Part> {
  const shared = { styles: new Styles(), texts: new Texts() };
  const noted: number[] = [];
  for (const [i, sheet] of book.sheets.entries()) {
    const links = sheetLinks(sheet, i + 1, charts);
    const ids = { drawing: idOf(links, "drawing"), noteBoxes: idOf(links, "vmlDrawing") };
    const path = `xl/worksheets/sheet${i + 1}.xml`;
    yield [path, worksheetXml(sheet, shared, ids, spellCells)];
    if (links.length > 0) yield [linksOf(path), linksXml(links)];
    if (ids.noteBoxes === undefined) continue;
    noted.push(i + 1);
    const notes = notesOf(sheet);
    yield [`xl/comments${i + 1}.xml`, commentsXml(notes)];
    yield [`xl/drawings/vmlDrawing${i + 1}.vml`, boxesXml(notes)];
  }
  yield ["xl/sharedStrings.xml", shared.texts.xml()];
  yield ["xl/styles.xml", shared.styles.xml()];
  yield* charts.parts();
  const names = book.sheets.map(({ name }) => name);
  yield ["xl/workbook.xml", workbookXml(book, sheetLink)];
  yield ["xl/_rels/workbook.xml.rels", linksXml(workbookLinks(names.length))];
  yield ["xl/theme/theme1.xml", themeXml()];
  yield ["docProps/core.xml", coreXml(book.document)];
  yield ["docProps/app.xml", appXml(book.document, names)];
  yield ["docProps/custom.xml", customXml(properties)];
  yield ["_rels/.rels", linksXml(packageLinks)];
  yield ["[Content_Types].xml", typesXml(names.length, noted, charts)];
}

function sheetLinks(sheet: Sheet, number: number, charts: Charts): Link[] {
  const links: Link[] = [];
  if (notesOf(sheet).length > 0) {
    links.push({
      id: "rId1",
      type: `${relations}/comments`,
      target: `../comments${number}.xml`,
    });
    links.push({
      id: "rId2",
      type: `${relations}/vmlDrawing`,
      target: `../drawings/vmlDrawing${number}.vml`,
    });
  }
  const drawing = charts.drawingOn(sheet.name);
  if (drawing === undefined) return links;
  const id = `rIdAdded${links.length + 1}`;
  return [...links, { id, type: `${relations}/drawing`, target: `../drawings/${drawing}` }];
}

const idOf = (links: readonly Link[], kind: string): string | undefined =>
  links.find(({ type }) => type === `${relations}/${kind}`)?.id;

const workbookLinks = (sheets: number): Link[] => [
  ...firstLinks,
  ...Array.from({ length: sheets }, (_, i) => ({
    id: sheetLink(i),
    type: `${relations}/worksheet`,
    target: `worksheets/sheet${i + 1}.xml`,
  })),
];

const packageLinks: readonly Link[] = [
  { id: "rId1", type: `${relations}/officeDocument`, target: "xl/workbook.xml" },
  {
    id: "rId2",
    type: `${packageRelations}/metadata/core-properties`,
    target: "docProps/core.xml",
  },
  { id: "rId3", type: `${relations}/extended-properties`, target: "docProps/app.xml" },
  { id: "rIdCustom", type: customRelation, target: "docProps/custom.xml" },
];

/** What each part is (ISO/IEC 29500-2, 10.1.2.2). */
function typesXml(sheets: number, noted: readonly number[], charts: Charts): string {
  const byEnding = (ending: string, type: string) =>
    `<Default Extension="${ending}" ContentType="${type}"/>`;
  const numbers = Array.from({ length: sheets }, (_, i) => i + 1);
  return (
    `${head}<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types">` +
    byEnding("rels", "application/vnd.openxmlformats-package.relationships+xml") +
    byEnding("xml", "application/xml") +
    override("/xl/workbook.xml", `${spreadsheet}.sheet.main+xml`) +
    numbers
      .map((i) => override(`/xl/worksheets/sheet${i}.xml`, `${spreadsheet}.worksheet+xml`))
      .join("") +
    override("/xl/theme/theme1.xml", `${drawingType}theme+xml`) +
    override("/xl/styles.xml", `${spreadsheet}.styles+xml`) +
    override("/xl/sharedStrings.xml", `${spreadsheet}.sharedStrings+xml`) +
    (noted.length === 0 ? "" : byEnding("vml", `${drawingType}vmlDrawing`)) +
    noted.map((i) => override(`/xl/comments${i}.xml`, `${spreadsheet}.comments+xml`)).join("") +
    override("/docProps/core.xml", "application/vnd.openxmlformats-package.core-properties+xml") +
    override("/docProps/app.xml", `${drawingType}extended-properties+xml`) +
    charts.types.map(({ part, kind }) => override(part, `${drawingType}${kind}+xml`)).join("") +
    `${override(customPart, customType)}</Types>`
  );
}
