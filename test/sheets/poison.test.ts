import { HyperFormula } from "hyperformula";
import { expect, test } from "vitest";
import { asValue } from "../../engine/evaluate/judge.js";
import { givenContent, judgeSheets } from "../../engine/evaluate/judge-task.js";
import { judgeOptions, registerOverrides } from "../../engine/evaluate/overrides.js";
import { CellError } from "../../engine/formula/value.js";
import type { Cell } from "../../engine/template/model.js";
import { judgeFormula } from "../../engine/template/printed.js";
import { bubblingStones } from "../../sheets/templates/bubbling-stones.js";
import { changedDemo, type Demo, demoOf, model, waterfallDemo } from "../support/changed-demo.js";
import { cellsToPoison, Judgement } from "../support/poison.js";
import { Ripple } from "../support/ripple.js";

/**
 * An error planted in a cell, as a damaged file has it: every figure that depends on it shows the
 * error or stays as it was, and the bid says that it does not stand. POISON_STRIDE=1 plants it in
 * every cell in turn (some minutes); POISON_FIRST begins elsewhere.
 */
const stride = Number(process.env.POISON_STRIDE ?? 71);
const first = Number(process.env.POISON_FIRST ?? 5);

const base = changedDemo({});

const demos: readonly (readonly [string, Demo])[] = [
  ["waterfall", waterfallDemo],
  ["bubbling stones", demoOf(bubblingStones, "bubbling-stones.json")],
];

test.each(demos)(
  "%s: an error in any cell makes no figure another figure, and the bid does not stand",
  {
    timeout: 1_200_000,
  },
  (_, { model, changedDemo }) => {
    const base = changedDemo({});
    const values = [...base];
    const ripple = new Ripple(model);
    const judgement = new Judgement(model, base);
    const faults: string[] = [];
    const cells = cellsToPoison(model, stride, first);
    for (const cell of cells) {
      const before = ripple.set(values, cell.index, new CellError("#DIV/0!", cell.id));
      faults.push(...judgement.faults(cell, (index) => values[index] as never));
      ripple.undo(values, before);
    }
    expect(faults.slice(0, 20)).toEqual([]);
    expect(values).toEqual(base);
    expect(cells.length).toBeGreaterThan(100);
  },
);

test("a figure that changes, and a bid that does not say so, are found", () => {
  const judgement = new Judgement(model, base);
  const [head, standing, planted] = ["total_dynamic_head", "bid_verdict", "rim_above_water"].map(
    (id) => model.byId.get(id) as Cell,
  );
  const silently = (index: number) => (index === head?.index ? 1 : (base[index] as never));
  expect(judgement.faults(planted as Cell, silently)).toEqual([
    expect.stringMatching(/^rim_above_water in error: total_dynamic_head is 1, not \d/),
    `rim_above_water in error: the first sheet says "${base[standing?.index as number]}"`,
  ]);
});

test("and so by hyperformula", { timeout: 120_000 }, () => {
  registerOverrides();
  const engine = HyperFormula.buildFromSheets(judgeSheets(model, base), judgeOptions);
  const sheets = new Map(model.sheets.map(({ name }) => [name, engine.getSheetId(name) as number]));
  const at = ({ sheet, line, column }: Cell) => ({
    sheet: sheets.get(sheet) as number,
    row: line - 1,
    col: column - 1,
  });
  const contentOf = (cell: Cell) =>
    cell.native ? `=${judgeFormula(model, cell)}` : givenContent(base[cell.index] ?? null);
  const judgement = new Judgement(model, base);
  const faults: string[] = [];
  const cells = cellsToPoison(model, stride * 41, first);
  let last: Cell | undefined;
  for (const cell of cells) {
    engine.batch(() => {
      if (last !== undefined) engine.setCellContents(at(last), contentOf(last));
      engine.setCellContents(at(cell), "=1/0");
    });
    last = cell;
    faults.push(
      ...judgement.faults(cell, (index) => {
        const figure = model.cells[index] as Cell;
        return asValue(engine.getCellValue(at(figure)), figure);
      }),
    );
  }
  engine.destroy();
  expect(faults.slice(0, 20)).toEqual([]);
  expect(cells.length).toBeGreaterThan(3);
});
