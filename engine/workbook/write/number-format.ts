import type { CellDeclaration } from "../../template/declare.js";
import { decimalsIn } from "../../units/decimals.js";
import type { UnitSystem } from "../../units/quantity.js";
import { unitOf } from "../../units/quantity.js";

/** A day as people write it, with its month in letters: no two places read it in two ways. */
export const dayFormat = "mmm d, yyyy";

/** The number format of a cell: decimals and thousands; the unit stands in a cell of its own. */
export function numberFormat(declaration: CellDeclaration, system: UnitSystem): string {
  const { quantity } = declaration;
  if (quantity.kind === "text") return declaration.kind === "input" ? "@" : "General";
  // a check is named after the fault: a yes beside it would be read as one
  if (declaration.kind === "check") return '"ok";"ok";"fails"';
  // programs that count yes as 1 show the words; others show TRUE and FALSE
  if (quantity.kind === "yesno") return '"yes";"yes";"no"';
  // a calculated date of 0 stands for none, and is not shown as a day of 1899
  if (quantity.kind === "date") return declaration.kind === "calc" ? `${dayFormat};;` : dayFormat;
  const decimals = decimalsIn(quantity, system, declaration.decimals);
  const point = decimals > 0 ? `.${"0".repeat(decimals)}` : "";
  const figure = figureFormat(declaration, system, point);
  // a column that asks for its decimals keeps to them, row by row
  const isMoney =
    unitOf(quantity, system).name === "$" && decimals > 0 && declaration.decimals === undefined;
  const { zero, beyond } = declaration.kind === "calc" ? declaration : {};
  if (beyond !== undefined) {
    const none = zero === undefined ? "" : `[=0]"${zero}";`;
    return `[>=${beyond.from}]"${beyond.says}";${none}${figure}`;
  }
  // from a thousand dollars on, cents are left out; a format takes two conditions at most
  if (isMoney) {
    const second = zero === undefined ? '[<=-1000]-"$"#,##0' : `[=0]"${zero}"`;
    return `[>=1000]"$"#,##0;${second};${figure}`;
  }
  return zero === undefined ? figure : `${figure};-${figure};"${zero}"`;
}

function figureFormat({ quantity }: CellDeclaration, system: UnitSystem, point: string): string {
  if (quantity.percent) return `0${point}%`;
  if (unitOf(quantity, system).name === "$") return `"$"#,##0${point}`;
  return `#,##0${point}`;
}

/** The label as it is written: beside a check's, TRUE in programs that show the word means that all is well. */
export const shownLabel = ({ kind, label }: CellDeclaration): string =>
  kind === "check" ? `${label} (ok?)` : label;

/** The unit printed beside a number; percentages and dates carry theirs in the format. */
export function shownUnit(declaration: CellDeclaration, system: UnitSystem): string {
  const { quantity } = declaration;
  if (quantity.kind !== "number" || quantity.percent) return "";
  const { name } = unitOf(quantity, system);
  return name === "$" ? "" : name;
}
