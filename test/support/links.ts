import { positionOf } from "../../engine/workbook/read/address.js";
import type { WorkbookContent } from "../../engine/workbook/read/content.js";
import { columnAt } from "../../engine/workbook/read/lookup.js";

/** The targets within the workbook that its formulas lead to, each with the cell that does. */
export function linksIn(content: WorkbookContent): Map<string, string> {
  const found = new Map<string, string>();
  for (const { name, cells } of content.sheets) {
    for (const [address, { formula = "" }] of cells) {
      for (const [, target = ""] of formula.matchAll(/HYPERLINK\("#([^"]+)"/gi)) {
        found.set(target, `${name}!${address}`);
      }
    }
  }
  // the first sheet leads on to where a check is mended, which the list of checks knows
  columnAt(content, "check_list.goes").forEach(({ cell, sheet, address }) => {
    found.set(String(cell.value), `${sheet}!${address}`);
  });
  return found;
}

/** What is wrong with a target: no cell has it, or a sheet that is not in sight. */
export function faultOf(content: WorkbookContent, target: string): string | undefined {
  const [, sheet, address] = /^'([^']+)'!\$?([A-Z]+\$?\d+)$/.exec(target) ?? [];
  const named = content.names.find(
    ({ name, scope }) => scope === undefined && name.toLowerCase() === target.toLowerCase(),
  );
  const on = sheet ?? named?.target?.sheet;
  if (on === undefined) return `${target} is neither a cell nor a name of one`;
  if (address !== undefined && positionOf(address.replace("$", "")) === undefined) {
    return `${target} is no cell`;
  }
  const { state } = content.sheets.find(({ name }) => name === on) ?? {};
  if (state === undefined) return `${target} is on sheet ${on}, which is not there`;
  return state === "visible" ? undefined : `${target} is on sheet ${on}, which is not in sight`;
}
