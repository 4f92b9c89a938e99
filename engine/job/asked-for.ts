import type { LinesBlock, TableBlock } from "../template/declare.js";
import type { Model } from "../template/model.js";
import { inputsOn, tableShown } from "../template/spread.js";

/**
 * The lists and tables that hold inputs, in the order in which the sheets ask for them. A table that
 * stands on several sheets comes where the first of its inputs does.
 */
export function askedFor(model: Model): (LinesBlock | TableBlock)[] {
  const seen = new Set<string>();
  return model.placed.flatMap(({ block, sheet }): (LinesBlock | TableBlock)[] => {
    if (block.kind === "lines") return [block];
    const table = tableShown(block);
    if (table === undefined || seen.has(table.name)) return [];
    if (inputsOn(table, block.kind === "part" ? sheet : undefined).length === 0) return [];
    seen.add(table.name);
    return [table];
  });
}
