import type { Value } from "../../formula/value.js";
import type { Model } from "../../template/model.js";
import type { CellContent, WorkbookContent } from "../read/content.js";
import { readWorkbook } from "../read/read.js";
import { textOf, unescaped } from "../read/text.js";
import { partsOf } from "./book/parts.js";
import type { Content, Sheet } from "./book/sheet.js";
import { Charts } from "./charts/add.js";
import type { Identity } from "./identity.js";
import { bookOf } from "./lay-out.js";
import { propertiesOf } from "./own-properties.js";
import { contentTypesFirst } from "./package.js";
import { linesXml, type Shared } from "./xml/cells.js";
import { cellText } from "./xml/text.js";
import { keepsSpaces } from "./xml/texts.js";
import { type Packed, packedNow, zipOf } from "./zip.js";

/**
 * What the reader finds in the workbook that `writeWorkbook` makes of the same job. The cells, which are most of it, are
 * taken from the layout as they stand there; all else is spelled and read.
 *
 * @param look with how it looks, as `ReadOptions.look`
 */
export function readBack(
  model: Model,
  values: readonly Value[],
  identity: Identity,
  look: boolean,
): WorkbookContent {
  const { book, places } = bookOf(model, values, identity);
  const charts = new Charts({ model, values }, places);
  const cells = new Map<string, Map<string, CellContent>>();
  const withoutCells = (sheet: Sheet, shared: Shared): string => {
    cells.set(sheet.name, cellsOf(sheet, shared, look));
    return linesXml(sheet);
  };
  const files: Packed[] = [];
  for (const [name, xml] of partsOf(
    book,
    propertiesOf(model, values, identity),
    charts,
    withoutCells,
  )) {
    files.push(packedNow(name, Buffer.from(xml), 0));
  }
  files.sort((a, b) => contentTypesFirst(a.name, b.name));
  const read = readWorkbook(zipOf(files), { look });
  return {
    ...read,
    sheets: read.sheets.map((sheet) => ({ ...sheet, cells: cells.get(sheet.name) ?? sheet.cells })),
  };
}

/** The filled cells of a sheet. */
function cellsOf({ rows }: Sheet, { styles }: Shared, look: boolean): Map<string, CellContent> {
  const found = new Map<string, CellContent>();
  for (const row of rows) {
    for (const cell of row?.cells ?? []) {
      if (cell === undefined) continue;
      // a place is given to each look in turn, also to those of empty cells
      const style = styles.placeOf(cell.style);
      if (cell.value === null) continue;
      const content = contentOf(cell.value);
      found.set(cell.address, look ? { ...content, style } : content);
    }
  }
  return found;
}

function contentOf(content: Exclude<Content, null>): CellContent {
  if (typeof content === "string") return { value: sharedText(content) };
  if (typeof content !== "object") return { value: plain(content) };
  const { formula, result } = content;
  const value =
    typeof result === "string"
      ? cellWords(result)
      : typeof result === "object"
        ? result
        : plain(result);
  return { value, formula: cellWords(formula) };
}

/** Files know no zero below zero. */
const plain = (value: number | boolean): number | boolean => (value === 0 ? 0 : value);

/** What does not come back from a file as it went in. */
const changed =
  // biome-ignore lint/suspicious/noControlCharactersInRegex: these are what is looked for
  /[\x00-\x08\x0b-\x1f\x7f\ufffe\uffff]|\p{Surrogate}/u;

/** A text of the list that the sheets share. */
const sharedText = (text: string): string =>
  changed.test(text) ? textOf(comesBack(text), keepsSpaces(text) ? "preserve" : undefined) : text;

/** A formula, or a text that one gives. */
const cellWords = (text: string): string =>
  changed.test(text) ? unescaped(comesBack(text)) : text;

const comesBack = (text: string): string =>
  cellText(text)
    .replaceAll(/&(amp|lt|gt);/g, (_, name: keyof typeof marks) => marks[name])
    .replaceAll(/\r\n?/g, "\n")
    .replaceAll(/\p{Surrogate}/gu, "\ufffd");

const marks = { amp: "&", lt: "<", gt: ">" } as const;
