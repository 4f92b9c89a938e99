import { DetailedCellError, HyperFormula } from "hyperformula";
import type { JudgedValue, JudgeTask } from "./judge-task.js";
import { judgeOptions, registerOverrides } from "./overrides.js";

/** The value of each formula by hyperformula. Knows no model, so that a thread needs none. */
export function judgedValues({ sheets, places }: JudgeTask): JudgedValue[] {
  registerOverrides();
  const engine = HyperFormula.buildFromSheets(sheets, judgeOptions);
  try {
    const ids = Object.keys(sheets).map((name) => engine.getSheetId(name) as number);
    return Array.from({ length: places.length / 3 }, (_, i) => {
      const [at, row, col] = places.slice(3 * i, 3 * i + 3) as [number, number, number];
      return plain(engine.getCellValue({ sheet: ids[at] as number, row, col }));
    });
  } finally {
    engine.destroy();
  }
}

/** What hyperformula tells of a cell. */
export function plain(value: unknown): JudgedValue {
  if (value instanceof DetailedCellError) {
    return { error: value.value.replace("#ERROR!", "#VALUE!") };
  }
  return value === null || value === undefined ? 0 : (value as number | string | boolean);
}
