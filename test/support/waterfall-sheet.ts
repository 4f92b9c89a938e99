import type { SheetDeclaration } from "../../engine/template/index.js";
import type { SheetName } from "../../sheets/plan/worksheets.js";
import { waterfall } from "../../sheets/templates/waterfall.js";

/**
 * A sheet of the waterfall, to be calculated among stand-ins of the others; without its charts,
 * whose points stand on other sheets.
 */
export function waterfallSheet(name: SheetName): SheetDeclaration {
  const found = waterfall.sheets.find((sheet) => sheet.name === name);
  if (found === undefined) throw new Error(`No sheet ${name}`);
  return { ...found, blocks: found.blocks.filter(({ kind }) => kind !== "chart") };
}

/** Its named formulas: those that the sheets under test call are among them. */
export const waterfallFormulas = waterfall.formulas;
