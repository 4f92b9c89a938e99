import type { Value } from "../../formula/value.js";
import { inUnit } from "../../template/compile.js";
import type { InputDeclaration, InputValue } from "../../template/declare.js";
import { type Cell, columnOf, type PlacedBlock } from "../../template/model.js";
import { inputsOn, tableShown } from "../../template/spread.js";
import type { Page } from "./blocks.js";

/** Does a job say something of its own in a block: a value that the template does not open with? */
export function saysSomething(page: Page, placed: PlacedBlock): boolean {
  const { block, sheet } = placed;
  const { model } = page;
  if (block.kind === "lines") {
    const cells = Object.keys(block.cells).flatMap((name) => model.byId.get(name) ?? []);
    return cells.some((cell) => isOwn(page, cell));
  }
  const table = tableShown(block);
  if (table === undefined) return true;
  const where = block.kind === "part" ? sheet : undefined;
  return inputsOn(table, where).some(([key]) =>
    columnOf(model, table.name, key).cells.some((cell) =>
      isOwn(page, cell, table.data?.[(cell.row ?? 1) - 1]?.[key]),
    ),
  );
}

function isOwn({ model, values }: Page, cell: Cell, ofRow?: InputValue): boolean {
  if (cell.declaration.kind !== "input") return false;
  const declared: InputDeclaration = cell.declaration;
  const value: Value = values[cell.index] ?? null;
  const opens = [ofRow, declared.default].flatMap((one) =>
    one === undefined ? [] : [inUnit(one, declared.quantity, model.system)],
  );
  return value !== null && value !== "" && !opens.some((one) => one === value);
}
