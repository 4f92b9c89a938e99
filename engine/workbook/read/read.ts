import type { DefinedName, DocumentProperties, SheetContent, WorkbookContent } from "./content.js";
import { notWorkbook, saveAsXlsx } from "./disguise.js";
import type { KeptParts } from "./kept-parts.js";
import type { ReadLimits } from "./limits.js";
import { readLook, readSheetLook } from "./look/read-look.js";
import { SheetListener } from "./look/sheet.js";
import { Package } from "./package.js";
import { readProperties } from "./properties.js";
import { damaged } from "./refused.js";
import type { Relationship } from "./relationships.js";
import { readSharedStrings } from "./shared-strings.js";
import { type ListedSheet, readWorkbookPart } from "./workbook-part.js";
import { readWorksheet } from "./worksheet.js";

export interface ReadOptions {
  /** Which sheets to read the cells of; all when left out. The others are listed, but empty. `common`: names that hold for the whole workbook. */
  readonly sheets?: (
    sheet: Pick<SheetContent, "name" | "state">,
    common: readonly DefinedName[],
    properties: DocumentProperties,
  ) => boolean;
  /** False: cells with formulas give their results alone. */
  readonly formulas?: boolean;
  /** True: also how the cells look, what lies over them and what else the workbook carries. */
  readonly look?: boolean;
  readonly limits?: Partial<ReadLimits>;
  /** What was read of workbooks before: what this one has in common with them is not read again. */
  readonly kept?: KeptParts;
}

const workbookType =
  /^application\/vnd\.(?:openxmlformats-officedocument\.spreadsheetml\.(?:sheet|template)|ms-excel\.(?:sheet|template)\.macroEnabled)\.main\+xml$/i;
const worksheetType =
  /^application\/vnd\.openxmlformats-officedocument\.spreadsheetml\.worksheet\+xml$/i;

/**
 * Reads an .xlsx workbook that anyone may have edited or forged: values, formulas, defined names and
 * properties (ISO/IEC 29500, transitional and strict). Nothing is computed, and no outside link followed.
 * Throws WorkbookRefused, within about two seconds and 300 MB, for anything that is not such a workbook,
 * breaks the format, or passes a limit.
 */
export function readWorkbook(bytes: Uint8Array, options: ReadOptions = {}): WorkbookContent {
  const from = new Package(bytes, options.limits, options.kept);
  const packageLinks = from.relationshipsOf("");
  const main = packageLinks.find(({ type }) => type === "officeDocument")?.target;
  if (main === undefined || !workbookType.test(from.contentType(main) ?? "")) {
    throw notWorkbook("The file is an office file, but not an .xlsx workbook", saveAsXlsx);
  }
  const workbook = readWorkbookPart(from, main);
  if (workbook.sheets.length === 0) throw damaged("The workbook has no sheets");
  const links = from.relationshipsOf(main);
  const strings = links.find(({ type }) => type === "sharedStrings")?.target;
  const uneven = options.look ? new Set<number>() : undefined;
  const context = {
    sharedStrings: strings === undefined ? [] : readSharedStrings(from, strings, uneven),
    date1904: workbook.date1904,
    ...(uneven === undefined ? {} : { uneven }),
  };
  const properties = readProperties(from, packageLinks);
  const linksById = new Map(links.map((link) => [link.id, link]));
  const targets = new Set<string>();
  const sheets = workbook.sheets.map((listed): SheetContent => {
    const { name, state } = listed;
    const link = linkOf(listed, linksById, from);
    if (targets.has(link.target.toLowerCase())) {
      throw damaged(`Sheet ${name} has the same part as another sheet`);
    }
    targets.add(link.target.toLowerCase());
    const read =
      link.type === "worksheet" &&
      (options.sheets?.({ name, state }, workbook.common, properties) ?? true);
    if (!read) {
      return {
        name,
        state,
        read,
        hiddenRows: 0,
        hiddenColumns: 0,
        validated: new Set(),
        cells: new Map(),
      };
    }
    if (!worksheetType.test(from.contentType(link.target) ?? "")) {
      throw damaged(`Sheet ${name} of the workbook has a part that is not a worksheet`);
    }
    const listener = options.look ? new SheetListener() : undefined;
    const content = readWorksheet(from, link.target, name, context, options.formulas, listener);
    const look = listener === undefined ? {} : { look: readSheetLook(from, link.target, listener) };
    return { name, state, read, ...content, ...look };
  });
  return {
    sheets,
    names: workbook.names,
    common: workbook.common,
    properties,
    partNames: from.partNames,
    date1904: workbook.date1904,
    ...(options.look ? { look: readLook(from, main, workbook.settings, packageLinks, links) } : {}),
  };
}

function linkOf(sheet: ListedSheet, links: ReadonlyMap<string, Relationship>, from: Package) {
  const link = links.get(sheet.relationshipId);
  if (link?.target === undefined || !from.has(link.target)) {
    throw damaged(`Sheet ${sheet.name} of the workbook points to no part inside it`);
  }
  return { type: link.type, target: link.target };
}
