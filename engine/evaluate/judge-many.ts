import { HyperFormula, type RawCellContent } from "hyperformula";
import type { Value } from "../formula/value.js";
import type { Model } from "../template/model.js";
import { asValue } from "./judge.js";
import { givenContent, judgeSheets } from "./judge-task.js";
import { judgeOptions, registerOverrides } from "./overrides.js";

/**
 * The judge for many jobs of one model: the sheets are built once, and each job sets only
 * the cells that differ from the job before. Call `close` when done.
 */
export class ManyJudge {
  readonly #engine: HyperFormula;
  readonly #sheets: readonly number[];
  readonly #last: (RawCellContent | undefined)[] = [];

  constructor(
    private readonly model: Model,
    first: readonly Value[],
  ) {
    registerOverrides();
    this.#engine = HyperFormula.buildFromSheets(judgeSheets(model, first), judgeOptions);
    this.#sheets = model.cells.map(({ sheet }) => this.#engine.getSheetId(sheet) as number);
    this.#last = model.cells.map((cell) =>
      cell.native === undefined ? givenContent(first[cell.index] ?? null) : undefined,
    );
  }

  /** A value for each cell of the model, by index; formula cells of the list given are not looked at. */
  values(given: readonly Value[]): Value[] {
    this.#engine.batch(() => {
      for (const cell of this.model.cells) {
        if (cell.native !== undefined) continue;
        const content = givenContent(given[cell.index] ?? null);
        if (content === this.#last[cell.index]) continue;
        this.#engine.setCellContents(this.#addressOf(cell.index), content);
        this.#last[cell.index] = content;
      }
    });
    return this.model.cells.map((cell) =>
      cell.native === undefined
        ? (given[cell.index] as Value)
        : asValue(this.#engine.getCellValue(this.#addressOf(cell.index)), cell),
    );
  }

  close(): void {
    this.#engine.destroy();
  }

  #addressOf(index: number): { sheet: number; row: number; col: number } {
    const cell = this.model.cells[index] as Model["cells"][number];
    return { sheet: this.#sheets[index] as number, row: cell.line - 1, col: cell.column - 1 };
  }
}
