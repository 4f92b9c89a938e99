import { CellError, type Value } from "../../engine/formula/value.js";
import { isApart } from "../../engine/template/bid-stands.js";
import type { Cell, Model } from "../../engine/template/model.js";

/**
 * What somebody reads of a bid and acts on: the headline, what sets pump and valves, and every
 * line of the pages handed out.
 */
export function figuresOf(model: Model): Cell[] {
  const handedOut = new Set(
    model.sheets.flatMap(({ name, handout }) => (handout === true ? [name] : [])),
  );
  const named = new Set([
    ...model.template.headline,
    ...["pump_speed", "pump_flow_hourly", "actual_manifold"],
    ...["pipe_lines.valve_setting", "pipe_lines.valve_words", "pipe_lines.actual_flow"],
  ]);
  return model.cells.filter(({ name, sheet }) => named.has(name) || handedOut.has(sheet));
}

/** Cells to plant an error in: every `stride`th from `first` on, but not those that count errors. */
export function cellsToPoison(model: Model, stride: number, first: number): Cell[] {
  return model.cells.filter(
    ({ index, name }) => index % stride === first % stride && !isApart(name),
  );
}

/**
 * What is wrong with a bid in which an error was planted in one cell: figures that became other
 * figures, and a first sheet that does not tell of cells in error. A line that only moved on its
 * page is the same line, and the one that says DRAFT is no figure.
 */
export class Judgement {
  private readonly figures: readonly Cell[];
  private readonly lines: ReadonlySet<Value>;
  private readonly standing: number;
  /** Filled in after the work: their errors say nothing of the bid. */
  private readonly afterwards: ReadonlySet<string>;

  constructor(
    model: Model,
    private readonly base: readonly Value[],
  ) {
    this.figures = figuresOf(model);
    this.lines = new Set(this.figures.map(({ index }) => base[index] as Value));
    this.afterwards = new Set(
      model.sheets.flatMap(({ name, afterwards }) => (afterwards === true ? [name] : [])),
    );
    this.standing = model.byId.get("bid_verdict")?.index as number;
  }

  faults(planted: Cell, valueAt: (index: number) => Value): string[] {
    const found: string[] = [];
    for (const cell of this.figures) {
      if (cell.index === planted.index) continue;
      const now = valueAt(cell.index);
      if (this.tells(cell, now)) {
        found.push(`${planted.id} in error: ${cell.id} is ${now}, not ${this.base[cell.index]}`);
      }
    }
    const standing = valueAt(this.standing);
    // in error itself it says enough
    const silent = typeof standing === "string" && !standing.includes("cells in error");
    if (silent && !this.afterwards.has(planted.sheet)) {
      found.push(`${planted.id} in error: the first sheet says "${standing}"`);
    }
    return found;
  }

  private tells({ index }: Cell, now: Value): boolean {
    const before = this.base[index] as Value;
    if (now instanceof CellError || now === before) return false;
    if (typeof now === "number" && typeof before === "number") {
      return Math.abs(now - before) > 1e-9 * Math.max(1, Math.abs(before));
    }
    return !(typeof now === "string" && (this.lines.has(now) || now.includes("DRAFT")));
  }
}
