import { addressOf, lastColumn, lastRow, type Position, positionOf } from "./address.js";
import { badCell, cellValue, type ValueContext } from "./cell-value.js";
import type { CellContent } from "./content.js";
import { addCovered } from "./covered.js";
import { setsApart } from "./look/runs.js";
import type { SheetListener } from "./look/sheet.js";
import { compatibility, spreadsheet } from "./namespaces.js";
import type { Package } from "./package.js";
import { SharedFormulas } from "./shared-formulas.js";
import { booleanOf, textOf, unescaped } from "./text.js";
import type { Attributes } from "./xml.js";

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
  const cells = new Map<string, CellContent>();
  const shared = new SharedFormulas(from.budget, sheet);
  let hiddenRows = 0;
  const validated = new Set<string>();
  let hiddenColumns = 0;
  let row = 0;
  let last: Position = { row: 0, column: 0 };
  let cell: OpenCell | undefined;
  let text = "";
  let space: string | undefined;

  const where = (address: string) => `${sheet}!${address}`;

  function openRow(attributes: Attributes): void {
    const written = attributes.r?.value;
    row = written === undefined ? row + 1 : /^\d{1,7}$/.test(written) ? Number(written) : 0;
    if (row < 1 || row > lastRow) {
      throw badCell(where(`row ${written ?? row}`), `is not a row from 1 to ${lastRow}`);
    }
    if (booleanOf(attributes.hidden?.value)) hiddenRows++;
    if (row !== last.row) last = { row, column: 0 };
  }

  function openCell(attributes: Attributes): void {
    const written = attributes.r?.value;
    const at = written === undefined ? { row, column: last.column + 1 } : positionOf(written);
    if (at === undefined || at.column > lastColumn) {
      throw badCell(where((written ?? "").slice(0, 40)), "is outside A1 to XFD1048576");
    }
    const address = addressOf(at);
    if (at.row !== row) throw badCell(where(address), `stands in row ${row}`);
    if (at.column === last.column || cells.has(address)) {
      throw badCell(where(address), "comes twice");
    }
    last = at;
    cell = { at, address, type: attributes.t?.value ?? "n" };
    if (listener !== undefined) cell.style = Number(attributes.s?.value ?? 0);
  }

  function closeCell(closed: OpenCell): void {
    const written = closed.type === "inlineStr" ? undefined : closed.value;
    const value =
      written === undefined
        ? (closed.inline ?? null)
        : cellValue(closed.type, written, where(closed.address), context);
    const attributes = closed.formulaAttributes;
    if (value === null && attributes === undefined) return;
    from.budget.spend("cells", 1, "The workbook");
    const kind = attributes?.t?.value;
    const look = lookOf(closed);
    if (attributes === undefined || !formulas) {
      cells.set(closed.address, { value, ...look });
    } else if (kind === "shared") {
      shared.add(
        cells,
        { address: closed.address, at: closed.at, value, ...look },
        attributes,
        closed.formula ?? "",
      );
    } else if (kind === "dataTable") {
      const inputs = [attributes.r1?.value ?? "", attributes.r2?.value ?? ""].join(",");
      cells.set(closed.address, { value, formula: `TABLE(${inputs})`, ...look });
    } else {
      const formula = closed.formula ?? "";
      from.budget.spend("formulaCharacters", formula.length, "The workbook");
      const array = kind === "array" ? { array: attributes.ref?.value ?? closed.address } : {};
      cells.set(
        closed.address,
        formula === "" ? { value, ...look } : { value, formula, ...array, ...look },
      );
    }
  }

  function lookOf({ style, type, value, uneven }: OpenCell): Pick<CellContent, "style" | "uneven"> {
    if (style === undefined) return {};
    const apart = uneven ?? (type === "s" && context.uneven?.has(Number(value)));
    return apart ? { style, uneven: true } : { style };
  }

  from.walk(part, {
    namespaces: listener === undefined ? spreadsheet : heardOf,
    root: "worksheet",
    ...(formulas ? {} : { silent: new Set([formulaPath]) }),
    open(path, attributes) {
      listener?.open(path, attributes);
      if (path === rowPath) openRow(attributes);
      else if (path === cellPath) openCell(attributes);
      else if (cell !== undefined && path.startsWith(runPath)) {
        if (setsApart(path.slice(runPath.length), attributes)) cell.uneven = true;
      } else if (path === "worksheet/cols/col") hiddenColumns += hiddenIn(attributes);
      else if (path === "worksheet/dataValidations/dataValidation") {
        addCovered(validated, attributes.sqref?.value ?? "");
      } else if (cell !== undefined && (path === valuePath || path === formulaPath)) {
        if (path === valuePath ? cell.value !== undefined : cell.formulaAttributes !== undefined) {
          throw badCell(where(cell.address), "has two values or two formulas");
        }
        if (path === formulaPath) cell.formulaAttributes = attributes;
        text = "";
      } else if (textPaths.has(path)) {
        text = "";
        space = attributes["xml:space"]?.value;
      }
    },
    text(path, piece) {
      if (cell === undefined) listener?.text(path, piece);
      if (
        cell === undefined ||
        !(path === valuePath || path === formulaPath || textPaths.has(path))
      ) {
        return;
      }
      text += piece;
      const longest = path === formulaPath ? longestFormula : longestText;
      if (text.length > longest) {
        throw badCell(where(cell.address), `holds over ${longest} characters`);
      }
    },
    close(path) {
      if (cell === undefined) return;
      if (path === valuePath) cell.value = text;
      else if (path === formulaPath) cell.formula = unescaped(text);
      else if (textPaths.has(path)) cell.inline = (cell.inline ?? "") + textOf(text, space);
      else if (path === cellPath) {
        closeCell(cell);
        cell = undefined;
      }
    },
  });
  shared.settle(cells);
  return { cells, hiddenRows, hiddenColumns: Math.min(hiddenColumns, lastColumn), validated };
}

function hiddenIn(attributes: Attributes): number {
  if (!booleanOf(attributes.hidden?.value)) return 0;
  const count = Number(attributes.max?.value) - Number(attributes.min?.value) + 1;
  return Math.max(count, 0);
}
