import type { Position } from "./address.js";
import { badCell } from "./cell-value.js";
import type { CellContent, CellValue } from "./content.js";
import type { Budget } from "./limits.js";
import { type CutFormula, cutFormula, distance, shiftFormula } from "./shift.js";
import type { Attributes } from "./xml.js";

interface Master {
  readonly at: Position;
  readonly cut: CutFormula;
}

/** A cell that shares a formula. */
interface Sharer {
  readonly address: string;
  readonly at: Position;
  readonly value: CellValue;
  readonly style?: number;
  readonly uneven?: true;
}

/** Writes out shared formulas (ISO/IEC 29500-1 §18.3.1.40): one cell has the text, the others its number. */
export class SharedFormulas {
  readonly #budget: Budget;
  readonly #sheet: string;
  readonly #masters = new Map<string, Master>();
  /** Cells that came before the text of their formula, with its number. */
  readonly #waiting: { readonly cell: Sharer; readonly index: string }[] = [];

  constructor(budget: Budget, sheet: string) {
    this.#budget = budget;
    this.#sheet = sheet;
  }

  /**
   * Puts a cell with a shared formula among the cells; `attributes` and `text` are those of its <f>.
   * A cell with text of its own keeps that text, and lends it to others if it says which (`ref`).
   */
  add(cells: Map<string, CellContent>, cell: Sharer, attributes: Attributes, text: string): void {
    const index = attributes.si?.value;
    if (index === undefined) {
      throw badCell(`${this.#sheet}!${cell.address}`, "shares a formula without number");
    }
    const master = this.#masters.get(index);
    if (text !== "") {
      if (master === undefined || attributes.ref !== undefined) {
        this.#masters.set(index, { at: cell.at, cut: cutFormula(text) });
      }
      this.#set(cells, cell, text);
    } else if (master === undefined) {
      this.#waiting.push({ cell, index });
      cells.set(cell.address, contentOf(cell));
    } else {
      this.#set(cells, cell, shifted(master, cell.at));
    }
  }

  /** Completes the cells that came before the text of their formula. */
  settle(cells: Map<string, CellContent>): void {
    for (const { cell, index } of this.#waiting) {
      const master = this.#masters.get(index);
      if (master === undefined) {
        throw badCell(
          `${this.#sheet}!${cell.address}`,
          `shares formula ${JSON.stringify(index.slice(0, 20))}, which no cell of the sheet spells out`,
        );
      }
      this.#set(cells, cell, shifted(master, cell.at));
    }
  }

  #set(cells: Map<string, CellContent>, cell: Sharer, formula: string): void {
    this.#budget.spend("formulaCharacters", formula.length, "The workbook");
    cells.set(cell.address, { ...contentOf(cell), formula });
  }
}

function contentOf({ address: _, at: __, ...content }: Sharer): CellContent {
  return content;
}

function shifted(master: Master, at: Position): string {
  const { rows, columns } = distance(master.at, at);
  return shiftFormula(master.cut, rows, columns);
}
