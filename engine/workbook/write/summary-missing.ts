import { addressOf, columnLetters } from "../../address.js";
import type { Value } from "../../formula/value.js";
import { firstFields, openFields } from "../../job/missing.js";
import { isOffice } from "../../template/declare.js";
import { statusKey } from "../../template/implied-names.js";
import { type Cell, columnOf, type Model } from "../../template/model.js";
import { secondCellOf } from "../../template/second-cell.js";
import { inputsOn, tableShown } from "../../template/spread.js";

/** A line of text made by a formula, with what it shows now. */
export interface LiveLine {
  readonly formula: string;
  readonly value: string;
}

/** The first fields of a job that are blank, in the order in which they are asked for, each leading to its cell. */
export function missingLines(model: Model, values: readonly Value[]): LiveLine[] {
  const open = new Set(openFields(model, values));
  return firstFields(model).map((cell) => {
    const { declaration, sheet, column, line } = cell;
    const place = addressOf(column, line);
    const said = `${declaration.label} (${sheet} ${place})`.replaceAll('"', "");
    const second = secondCellOf(model, cell);
    const blank =
      second === undefined
        ? `ISBLANK(${nameOf(cell)})`
        : `AND(ISBLANK(${nameOf(cell)}),ISBLANK(${nameOf(second)}))`;
    return {
      formula: `IF(${blank},HYPERLINK("#'${sheet}'!${place}","${said}"),"")`,
      value: open.has(cell) ? said : "",
    };
  });
}

const nameOf = ({ table, name, sheet, column, line }: Cell): string =>
  table === undefined ? name : `'${sheet}'!$${columnLetters(column)}$${line}`;

/** The cells of a column as a formula of another sheet writes them: messages have no names. */
function areaOf(cells: readonly Cell[]): string {
  const [first, last] = [cells[0] as Cell, cells.at(-1) as Cell];
  const at = ({ column, line }: Cell) => `$${columnLetters(column)}$${line}`;
  return `'${first.sheet}'!${at(first)}:${at(last)}`;
}

/**
 * For each sheet that asks, what its rows still need: tables in which somebody has begun a row that is not
 * complete, or typed what breaks a rule, each with the words that stand beside the row.
 */
export function rowLines(model: Model, values: readonly Value[]): LiveLine[] {
  const inSight = (model.template.asks ?? []).filter(({ hidden }) => !hidden);
  const asking = new Set(inSight.map(({ name }) => name));
  const bySheet = new Map<string, { heading: string; status: string; told: string[] }[]>();
  for (const { block, sheet } of model.placed) {
    const table = asking.has(sheet) ? tableShown(block) : undefined;
    if (table?.filled === undefined) continue;
    const where = block.kind === "part" ? sheet : undefined;
    const own = Object.values(table.columns)[0]?.kind === "input";
    if (!own || inputsOn(table, where).every(([, one]) => isOffice(one))) continue;
    const key = statusKey(where);
    const { cells } = columnOf(model, table.name, key);
    const told = cells.map(({ index }) => values[index]);
    const [heading = ""] = block.heading.split(",");
    const found = bySheet.get(sheet) ?? [];
    found.push({
      heading,
      status: areaOf(cells),
      told: told.filter((one): one is string => typeof one === "string" && one !== ""),
    });
    bySheet.set(sheet, found);
  }
  return [...bySheet].map(([sheet, tables]) => {
    const parts = tables.map(({ heading, status }) => {
      const joined = `_xlfn.TEXTJOIN(", ",TRUE,${status})`;
      return `IF(LEN(${joined})>0,"${heading.replaceAll('"', "")}: "&${joined},"")`;
    });
    const said = tables
      .filter(({ told }) => told.length > 0)
      .map(({ heading, told }) => `${heading}: ${told.join(", ")}`)
      .join("; ");
    const value = said === "" ? "" : `${sheet}: ${said}`.replaceAll("← ", "");
    const text = `SUBSTITUTE("${sheet}: "&_xlfn.TEXTJOIN("; ",TRUE,${parts.join(",")}),"← ","")`;
    return { formula: `IF(LEN(${text})>${sheet.length + 2},${text},"")`, value };
  });
}
