import { isDeepStrictEqual } from "node:util";
import type { DefinedName, SheetState } from "./content.js";
import { targetOf } from "./defined-names.js";
import { relationships, spreadsheet } from "./namespaces.js";
import type { Package } from "./package.js";
import {
  type PlainNames,
  plainNamesIn,
  type WrittenName,
  type WrittenNames,
  writtenNamesIn,
} from "./plain-names.js";
import { damaged } from "./refused.js";
import { booleanOf, unescaped } from "./text.js";
import type { Attributes, Cut } from "./xml.js";

export interface ListedSheet {
  readonly name: string;
  readonly state: SheetState;
  readonly relationshipId: string;
}

export interface WorkbookPart {
  readonly sheets: readonly ListedSheet[];
  readonly names: readonly DefinedName[];
  /** Those of them that hold for the whole workbook: one list for all workbooks that have the same. */
  readonly common: readonly DefinedName[];
  readonly date1904: boolean;
  /** Attributes of what sets the workbook's calculation: `calcPr.iterate`, `workbookPr.date1904`. */
  readonly settings: ReadonlyMap<string, string>;
}

const namePath = "workbook/definedNames/definedName";
const longestDefinition = 16384;

/** Reads the workbook part (ISO/IEC 29500-1 §18.2): the list of sheets and the defined names. */
export function readWorkbookPart(from: Package, part: string): WorkbookPart {
  const sheets: ListedSheet[] = [];
  const written: WrittenName[] = [];
  let common: CommonNames | undefined;
  let date1904 = false;
  const settings = new Map<string, string>();
  const keep = (element: string, attributes: Attributes) => {
    for (const { local, value } of Object.values(attributes)) {
      settings.set(`${element}.${local}`, value);
    }
  };
  let attributesOfName: Attributes = {};
  let text = "";
  const { kept, budget } = from;
  const takeNames = (plain: PlainNames): Cut | undefined => {
    const place = `names of ${part}`;
    const known = kept?.find<CommonNames>(place, plain.common);
    const read = known ?? writtenNamesIn(plain.common);
    const scoped = writtenNamesIn(plain.scoped);
    if (read === undefined || scoped === undefined) return undefined;
    const tell = () => {
      budget.spend("names", read.written.length + scoped.written.length, "The workbook");
      written.push(...scoped.written);
      common = known ?? kept?.keep(place, plain.common, { ...read });
    };
    return { outside: plain.outside, markup: read.markup + scoped.markup, tell };
  };
  from.walk(part, {
    namespaces: spreadsheet,
    root: "workbook",
    // for a single workbook it is not worth the while
    bulk: kept && {
      path: "workbook/definedNames",
      cut: (whole) => {
        const plain = plainNamesIn(whole);
        return plain && takeNames(plain);
      },
    },
    open(path, attributes) {
      if (path === "workbook/sheets/sheet") sheets.push(sheetOf(attributes));
      else if (path === "workbook/workbookPr") {
        date1904 = booleanOf(attributes.date1904?.value) ?? false;
        keep("workbookPr", attributes);
      } else if (path === "workbook/calcPr") keep("calcPr", attributes);
      else if (path === namePath) {
        budget.spend("names", 1, "The workbook");
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
      const { hidden, localSheetId } = attributesOfName;
      written.push({ name, text, hidden: hidden?.value, localSheetId: localSheetId?.value });
    },
  });
  const names = namesOf(written, sheets);
  const held = common && resolved(common, sheets);
  return {
    sheets,
    names: held === undefined ? names : [...held, ...names],
    common: held ?? names.filter((one) => one.scope === undefined),
    date1904,
    settings,
  };
}

/** Names that workbooks have in common, with what they point to among the sheets of the last of them. */
interface CommonNames extends WrittenNames {
  resolved?: { readonly sheets: string; readonly names: readonly DefinedName[] };
}

function resolved(common: CommonNames, sheets: readonly ListedSheet[]): readonly DefinedName[] {
  const among = JSON.stringify(sheets.map(({ name }) => name));
  if (common.resolved?.sheets !== among) {
    common.resolved = { sheets: among, names: namesOf(common.written, sheets) };
  }
  return common.resolved.names;
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
  return written.flatMap(({ localSheetId, ...said }) => {
    const [name, text] = [unescaped(said.name), unescaped(said.text)];
    const hidden = booleanOf(said.hidden) ?? false;
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
