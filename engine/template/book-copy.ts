import { copyName } from "./implied-names.js";
import type { Cell, Model } from "./model.js";

/** The cell beside an input that holds what the office book says; undefined where the office is not asked. */
export function bookCopyOf(model: Model, { name, row }: Cell): Cell | undefined {
  const copy = copyName(name);
  return model.byId.get(row === undefined ? copy : `${copy}[${row}]`);
}
