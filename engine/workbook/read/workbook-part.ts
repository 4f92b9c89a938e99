import type { SheetState } from "./content.js";
import { NamesReader, type ReadNames } from "./names-reader.js";
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

export interface WorkbookPart extends ReadNames {
  readonly sheets: readonly ListedSheet[];
  readonly date1904: boolean;
  /** Attributes of what sets the workbook's calculation: `calcPr.iterate`, `workbookPr.date1904`. */
  readonly settings: ReadonlyMap<string, string>;
}

const namePath = "workbook/definedNames/definedName";

/** Reads the workbook part (ISO/IEC 29500-1 §18.2): the list of sheets and the defined names. */
export function readWorkbookPart(from: Package, part: string): WorkbookPart {
  const sheets: ListedSheet[] = [];
  const names = new NamesReader(from, part);
  let date1904 = false;
  const settings = new Map<string, string>();
  const keep = (element: string, attributes: Attributes) => {
    for (const { local, value } of Object.values(attributes)) {
      settings.set(`${element}.${local}`, value);
    }
  };
  from.walk(part, {
    namespaces: spreadsheet,
    root: "workbook",
    bulk: names.bulk,
    open(path, attributes) {
      if (path === "workbook/sheets/sheet") sheets.push(sheetOf(attributes));
      else if (path === "workbook/workbookPr") {
        date1904 = booleanOf(attributes.date1904?.value) ?? false;
        keep("workbookPr", attributes);
      } else if (path === "workbook/calcPr") keep("calcPr", attributes);
      else if (path === namePath) names.open(attributes);
    },
    text(path, piece) {
      if (path === namePath) names.text(piece);
    },
    close(path) {
      if (path === namePath) names.close();
    },
  });
  return { sheets, ...names.settled(sheets), date1904, settings };
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
