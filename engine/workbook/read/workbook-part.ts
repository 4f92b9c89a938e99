import { isDeepStrictEqual } from "node:util";
import type { DefinedName, SheetState } from "./content.js";
import { targetOf } from "./defined-names.js";
import { relationships, spreadsheet } from "./namespaces.js";
import type { Package } from "./package.js";
import { damaged } from "./refused.js";
import { booleanOf, unescaped } from "./text.js";
import type { Attributes } from "./xml.js";

export interface ListedSheet {
  readonly name: string;
  readonly state: SheetState;
  readonly relationshipId: string;
}

export interface WorkbookPart {
  readonly sheets: readonly ListedSheet[];
  readonly names: readonly DefinedName[];
  readonly date1904: boolean;
  /** Attributes of what sets the workbook's calculation: `calcPr.iterate`, `workbookPr.date1904`. */
  readonly settings: ReadonlyMap<string, string>;
}

interface WrittenName {
  readonly name: string;
  readonly text: string;
  readonly hidden: boolean;
  readonly localSheetId: string | undefined;
}

const namePath = "workbook/definedNames/definedName";
const longestDefinition = 16384;

/** Reads the workbook part (ISO/IEC 29500-1 §18.2): the list of sheets and the defined names. */
export function readWorkbookPart(from: Package, part: string): WorkbookPart {
  const sheets: ListedSheet[] = [];
  const written: WrittenName[] = [];
  let date1904 = false;
  const settings = new Map<string, string>();
  const keep = (element: string, attributes: Attributes) => {
    for (const { local, value } of Object.values(attributes)) {
      settings.set(`${element}.${local}`, value);
    }
  };
  let attributesOfName: Attributes = {};
  let text = "";
  from.walk(part, {
    namespaces: spreadsheet,
    root: "workbook",
    open(path, attributes) {
      if (path === "workbook/sheets/sheet") sheets.push(sheetOf(attributes));
      else if (path === "workbook/workbookPr") {
        date1904 = booleanOf(attributes.date1904?.value) ?? false;
        keep("workbookPr", attributes);
      } else if (path === "workbook/calcPr") keep("calcPr", attributes);
      else if (path === namePath) {
        from.budget.spend("names", 1, "The workbook");
        attributesOfName = attributes;
        text = "";
      }
    },
    text(path, piece) {
      if (path === namePath) text += piece;
      if (text.length > longestDefinition) {
        throw damaged(
          `A defined name of the workbook is over ${longestDefinition} characters long`,
        );
      }
    },
    close(path) {
      if (path !== namePath) return;
      const name = attributesOfName.name?.value;
      if (name === undefined) throw damaged("A defined name of the workbook has no name");
      written.push({
        name: unescaped(name),
        text: unescaped(text),
        hidden: booleanOf(attributesOfName.hidden?.value) ?? false,
        localSheetId: attributesOfName.localSheetId?.value,
      });
    },
  });
  return { sheets, names: namesOf(written, sheets), date1904, settings };
}

function sheetOf(attributes: Attributes): ListedSheet {
  const name = unescaped(attributes.name?.value ?? "");
  const state = attributes.state?.value ?? "visible";
  const id = Object.values(attributes).find(
    ({ local, uri }) => local === "id" && relationships.has(uri),
  )?.value;
  if (name === "" || id === undefined)
    throw damaged("A sheet of the workbook has no name or no part");
  if (state !== "visible" && state !== "hidden" && state !== "veryHidden") {
    throw damaged(`Sheet ${name} is in the unknown state ${JSON.stringify(state)}`);
  }
  return { name, state, relationshipId: id };
}

function namesOf(written: readonly WrittenName[], sheets: readonly ListedSheet[]): DefinedName[] {
  const sheetNames = new Map(sheets.map(({ name }) => [name.toLowerCase(), name]));
  if (sheetNames.size < sheets.length)
    throw damaged("Two sheets of the workbook have the same name");
  const seen = new Map<string, DefinedName>();
  return written.flatMap(({ name, text, hidden, localSheetId }) => {
    const scope = localSheetId === undefined ? undefined : sheets[Number(localSheetId)]?.name;
    if (localSheetId !== undefined && scope === undefined) {
      throw damaged(
        `The defined name ${name} belongs to sheet ${localSheetId} of ${sheets.length}`,
      );
    }
    const key = `${localSheetId ?? ""}!${name.toLowerCase()}`;
    const defined = { name, text, target: targetOf(text, sheetNames), scope, hidden };
    const before = seen.get(key);
    if (before !== undefined && isSameArea(before, defined)) return [];
    if (before !== undefined && !keptTwice.test(name)) {
      throw damaged(`The defined name ${name} comes twice`);
    }
    seen.set(key, defined);
    return [defined];
  });
}

/** Where somebody set another print area in LibreOffice, it writes the new one and, after it, the old one. */
const keptTwice = /^_xlnm\.print_(area|titles)$/i;

/** LibreOffice writes a print area of one cell twice, as `$O$1` and as `$O$1:$O$1`. */
const isSameArea = (one: DefinedName, other: DefinedName): boolean =>
  /^_xlnm\./i.test(one.name) &&
  one.target !== undefined &&
  isDeepStrictEqual(one.target, other.target);
