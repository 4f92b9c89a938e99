import type { Document } from "../document.js";
import { Sheet, type SheetOptions } from "./sheet.js";

/** A name that a book defines, and the cells that it stands for, such as `$B$4` or `$B$4:$B$9`. */
export interface DefinedName {
  readonly name: string;
  readonly sheet: string;
  readonly area: string;
}

/** A workbook as it is laid out, before it is spelled as the parts of a package. */
export class Book {
  readonly sheets: Sheet[] = [];
  readonly names: DefinedName[] = [];

  constructor(readonly document: Document) {}

  addSheet(name: string, options?: SheetOptions): Sheet {
    const sheet = new Sheet(name, options);
    this.sheets.push(sheet);
    return sheet;
  }
}
