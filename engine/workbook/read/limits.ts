import { WorkbookRefused } from "./refused.js";

/** How much of a workbook is read before it is refused. Bytes, characters and counts. */
export interface ReadLimits {
  /** Size of the file. Photos are never unpacked, but they are in it. */
  readonly fileBytes: number;
  /** Files inside the zip archive. */
  readonly entries: number;
  /** Unpacked size of one part that is read. */
  readonly partBytes: number;
  /** Unpacked size of all the parts that are read. */
  readonly unpackedBytes: number;
  /** Unpacked over packed size, for parts over 1 MB. */
  readonly ratio: number;
  /** XML elements and attributes in all the parts that are read. */
  readonly markup: number;
  /** Cells that hold a value or a formula, in all the sheets that are read. */
  readonly cells: number;
  readonly sharedStrings: number;
  readonly names: number;
  /** Looks of cells, and those of conditional formats. */
  readonly styles: number;
  /** Length of all formulas together, after shared formulas are written out. */
  readonly formulaCharacters: number;
}

/** Some fifty times what an estimate needs, and still read or refused within two seconds. */
export const defaultLimits: ReadLimits = {
  fileBytes: 64e6,
  entries: 2000,
  partBytes: 8e6,
  unpackedBytes: 12e6,
  ratio: 250,
  markup: 900e3,
  cells: 100e3,
  sharedStrings: 100e3,
  names: 20e3,
  styles: 20e3,
  formulaCharacters: 10e6,
};

const meaning: Record<keyof ReadLimits, string> = {
  fileBytes: "bytes in the file",
  entries: "files inside the workbook",
  partBytes: "unpacked bytes in one part",
  unpackedBytes: "unpacked bytes",
  ratio: "as the ratio of unpacked to packed bytes",
  markup: "XML elements and attributes",
  cells: "filled cells",
  sharedStrings: "texts",
  names: "defined names",
  styles: "looks of cells",
  formulaCharacters: "characters of formulas",
};

const nothing = Object.fromEntries(Object.keys(meaning).map((limit) => [limit, 0])) as Record<
  keyof ReadLimits,
  number
>;

/** Counts what reading has used up, and refuses the workbook at the first limit that is passed. */
export class Budget {
  readonly limits: ReadLimits;
  readonly #spent: Record<keyof ReadLimits, number>;

  constructor(limits: Partial<ReadLimits> = {}) {
    this.limits = { ...defaultLimits, ...limits };
    this.#spent = { ...nothing };
  }

  /** Adds to a running count. */
  spend(limit: keyof ReadLimits, amount: number, where: string): void {
    const total = this.#spent[limit] + amount;
    this.#spent[limit] = total;
    this.check(limit, total, where);
  }

  /** Holds one figure against its limit. */
  check(limit: keyof ReadLimits, value: number, where: string): void {
    if (value <= this.limits[limit]) return;
    throw new WorkbookRefused(
      "workbook-size",
      `${where} has ${Math.ceil(value)} ${meaning[limit]}; at most ${this.limits[limit]} are read. ` +
        "Take out what does not belong to the estimate (pasted data, formatted empty rows) and save again.",
    );
  }
}
