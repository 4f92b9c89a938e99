import { addressOf, lastColumn, lastRow, type Position, positionOf } from "./address.js";
import { badCell, cellValue, type ValueContext } from "./cell-value.js";
import type { CellContent } from "./content.js";
import { addCovered, stepsOfSheet } from "./covered.js";
import { setsApart } from "./look/runs.js";
import type { SheetListener } from "./look/sheet.js";
import { compatibility, spreadsheet } from "./namespaces.js";
import type { Package } from "./package.js";
import { type PlainRows, plainRowsIn } from "./plain-rows.js";
import { SharedFormulas } from "./shared-formulas.js";
import { booleanOf, textOf, unescaped } from "./text.js";
import type { Attributes, Bulk, XmlVisitor } from "./xml.js";

export interface SheetCells {
  readonly cells: Map<string, CellContent>;
  readonly hiddenRows: number;
  readonly validated: ReadonlySet<string>;
  readonly hiddenColumns: number;
}

/** The usual limit for the text of a cell; and twice that of a formula, since prefixes make it longer in the file. */
const longestText = 32767;
const longestFormula = 16384;

const rowPath = "worksheet/sheetData/row";
const cellPath = `${rowPath}/c`;
const valuePath = `${cellPath}/v`;
const formulaPath = `${cellPath}/f`;
const runPath = `${cellPath}/is/r/rPr/`;
const textPaths = new Set([`${cellPath}/is/t`, `${cellPath}/is/r/t`]);

/** The cell that is being read. */
interface OpenCell {
  readonly at: Position;
  readonly address: string;
  readonly type: string;
  value?: string;
  inline?: string;
  formula?: string;
  formulaAttributes?: Attributes;
  style?: number;
  uneven?: true;
}

/** What is read of a worksheet beside its rows, where only values are wanted. Several share it: it is not added to. */
type Around = { readonly validated: Set<string>; readonly hiddenColumns: number };

/** With what decides how cells look, alternatives for other programs are heard of too. */
const heardOf: ReadonlySet<string> = new Set([...spreadsheet, ...compatibility]);

/**
 * Reads the filled cells of a worksheet part (ISO/IEC 29500-1 §18.3.1). Everything that does not bear on
 * values (merges, validations, conditional formats) is passed over, whatever area it claims.
 * @param formulas false: only the values are wanted, and cells with formulas give their results alone
 * @param listener hears what decides how the cells look
 */
export function readWorksheet(
  from: Package,
  part: string,
  sheet: string,
  context: ValueContext,
  formulas = true,
  listener?: SheetListener,
): SheetCells {
  const reader = new WorksheetReader(from, sheet, context, formulas, listener);
  from.walk(part, reader);
  return reader.settled();
}

/** Hears of the elements of a worksheet one by one, and keeps what its cells hold. */
class WorksheetReader implements XmlVisitor {
  readonly namespaces: ReadonlySet<string>;
  readonly root = "worksheet";
  readonly silent: ReadonlySet<string>;
  readonly bulk?: Bulk;
  private readonly cells = new Map<string, CellContent>();
  private validated = new Set<string>();
  private stepsLeft = stepsOfSheet;
  private readonly shared: SharedFormulas;
  private hiddenRows = 0;
  private hiddenColumns = 0;
  private row = 0;
  private last: Position = { row: 0, column: 0 };
  private cell: OpenCell | undefined;
  private piece = "";
  private space: string | undefined;

  constructor(
    private readonly from: Package,
    private readonly sheet: string,
    private readonly context: ValueContext,
    private readonly formulas: boolean,
    private readonly listener: SheetListener | undefined,
  ) {
    this.namespaces = listener === undefined ? spreadsheet : heardOf;
    this.shared = new SharedFormulas(from.budget, sheet);
    this.silent = new Set(formulas ? [] : [formulaPath]);
    // with formulas or looks each element is asked about
    if (!formulas && listener === undefined) this.bulk = this.plainRows();
  }

  private plainRows(): Bulk {
    return {
      path: "worksheet/sheetData",
      cut: (text) => {
        const found = plainRowsIn(text);
        if (found === undefined) return undefined;
        const { outside, rows, markup } = found;
        return { outside, markup, tell: () => this.takeRows(rows) };
      },
      around: {
        state: (): Around => ({ validated: this.validated, hiddenColumns: this.hiddenColumns }),
        take: (state) => {
          ({ validated: this.validated, hiddenColumns: this.hiddenColumns } = state as Around);
        },
      },
    };
  }

  private takeRows({ rows, addresses, types, values, hasFormula }: PlainRows): void {
    let at = 0;
    for (const [r, hidden, count] of rows) {
      this.openRow(r, hidden);
      for (const end = at + count; at < end; at++) {
        this.openCell(addresses[at], types[at]);
        const cell = this.cell as OpenCell;
        const value = values[at];
        if (value !== undefined) cell.value = value;
        if (hasFormula[at]) cell.formulaAttributes = {};
        this.keep(cell);
      }
    }
    this.cell = undefined;
  }

  open(path: string, attributes: Attributes): void {
    this.listener?.open(path, attributes);
    if (path === rowPath) this.openRow(attributes.r?.value, attributes.hidden?.value);
    else if (path === cellPath)
      this.openCell(attributes.r?.value, attributes.t?.value, attributes.s?.value);
    else if (path === valuePath || path === formulaPath) this.openContent(path, attributes);
    else if (this.cell !== undefined && path.startsWith(runPath)) {
      if (setsApart(path.slice(runPath.length), attributes)) this.cell.uneven = true;
    } else if (path === "worksheet/cols/col") this.hiddenColumns += hiddenIn(attributes);
    else if (path === "worksheet/dataValidations/dataValidation") {
      const areas = attributes.sqref?.value ?? "";
      this.stepsLeft = addCovered(this.validated, areas, this.stepsLeft);
    } else if (textPaths.has(path)) {
      this.piece = "";
      this.space = attributes["xml:space"]?.value;
    }
  }

  text(path: string, piece: string): void {
    const { cell } = this;
    if (cell === undefined) {
      this.listener?.text(path, piece);
      return;
    }
    if (path !== valuePath && path !== formulaPath && !textPaths.has(path)) return;
    this.piece += piece;
    const longest = path === formulaPath ? longestFormula : longestText;
    if (this.piece.length > longest) {
      throw badCell(this.where(cell.address), `holds over ${longest} characters`);
    }
  }

  close(path: string): void {
    const { cell, piece, space } = this;
    if (cell === undefined) return;
    if (path === valuePath) cell.value = piece;
    else if (path === formulaPath) cell.formula = unescaped(piece);
    else if (textPaths.has(path)) cell.inline = (cell.inline ?? "") + textOf(piece, space);
    else if (path === cellPath) {
      this.keep(cell);
      this.cell = undefined;
    }
  }

  settled(): SheetCells {
    const { cells, hiddenRows, validated } = this;
    this.shared.settle(cells);
    return {
      cells,
      hiddenRows,
      hiddenColumns: Math.min(this.hiddenColumns, lastColumn),
      validated,
    };
  }

  private where(address: string): string {
    return `${this.sheet}!${address}`;
  }

  private openRow(written: string | undefined, hidden: string | undefined): void {
    const next =
      written === undefined ? this.row + 1 : /^\d{1,7}$/.test(written) ? Number(written) : 0;
    if (next < 1 || next > lastRow) {
      throw badCell(this.where(`row ${written ?? next}`), `is not a row from 1 to ${lastRow}`);
    }
    this.row = next;
    if (booleanOf(hidden)) this.hiddenRows++;
    if (next !== this.last.row) this.last = { row: next, column: 0 };
  }

  private openCell(written: string | undefined, type = "n", style = "0"): void {
    const { row, last } = this;
    const at = written === undefined ? { row, column: last.column + 1 } : positionOf(written);
    if (at === undefined || at.column > lastColumn) {
      throw badCell(this.where((written ?? "").slice(0, 40)), "is outside A1 to XFD1048576");
    }
    const address = addressOf(at);
    if (at.row !== row) throw badCell(this.where(address), `stands in row ${row}`);
    if (at.column === last.column || this.cells.has(address)) {
      throw badCell(this.where(address), "comes twice");
    }
    this.last = at;
    this.cell = { at, address, type };
    if (this.listener !== undefined) this.cell.style = Number(style);
  }

  /** A value or a formula, of which a cell has one each. */
  private openContent(path: string, attributes: Attributes): void {
    const { cell } = this;
    if (cell === undefined) return;
    if (path === valuePath ? cell.value !== undefined : cell.formulaAttributes !== undefined) {
      throw badCell(this.where(cell.address), "has two values or two formulas");
    }
    if (path === formulaPath) cell.formulaAttributes = attributes;
    this.piece = "";
  }

  private keep(closed: OpenCell): void {
    const { cells, from } = this;
    const { address, at, formula = "", formulaAttributes: attributes } = closed;
    const value = this.valueOf(closed);
    if (value === null && attributes === undefined) return;
    from.budget.spend("cells", 1, "The workbook");
    const kind = attributes?.t?.value;
    const look = this.lookOf(closed);
    if (attributes === undefined || !this.formulas) cells.set(address, { value, ...look });
    else if (kind === "shared")
      this.shared.add(cells, { address, at, value, ...look }, attributes, formula);
    else if (kind === "dataTable") {
      const inputs = [attributes.r1?.value ?? "", attributes.r2?.value ?? ""].join(",");
      cells.set(address, { value, formula: `TABLE(${inputs})`, ...look });
    } else {
      from.budget.spend("formulaCharacters", formula.length, "The workbook");
      const array = kind === "array" ? { array: attributes.ref?.value ?? address } : {};
      cells.set(
        address,
        formula === "" ? { value, ...look } : { value, formula, ...array, ...look },
      );
    }
  }

  private lookOf({ style, type, value, uneven }: OpenCell): Pick<CellContent, "style" | "uneven"> {
    if (style === undefined) return {};
    const apart = uneven ?? (type === "s" && this.context.uneven?.has(Number(value)));
    return apart ? { style, uneven: true } : { style };
  }

  private valueOf({ type, value, inline, address }: OpenCell): CellContent["value"] {
    if (type === "inlineStr" || value === undefined) return inline ?? null;
    return cellValue(type, value, this.where(address), this.context);
  }
}

function hiddenIn(attributes: Attributes): number {
  if (!booleanOf(attributes.hidden?.value)) return 0;
  const count = Number(attributes.max?.value) - Number(attributes.min?.value) + 1;
  return Math.max(count, 0);
}
