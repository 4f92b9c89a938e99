import { addressOf, columnLetters } from "../../address.js";
import type { Value } from "../../formula/value.js";
import { firstFields } from "../../job/missing.js";
import { statusKey } from "../../template/implied-names.js";
import { columnOf, type Model } from "../../template/model.js";
import { inputsOn, tableShown } from "../../template/spread.js";

/** A line of text made by a formula, with what it shows now. */
export interface LiveLine {
  readonly formula: string;
  readonly value: string;
}

/** The first fields of a job that are blank, in the order in which they are asked for, each leading to its cell. */
export function missingLines(model: Model, values: readonly Value[]): LiveLine[] {
  return firstFields(model).map(({ declaration, index, name, sheet, column, line, table }) => {
    const place = addressOf(column, line);
    const at = table === undefined ? name : `'${sheet}'!$${columnLetters(column)}$${line}`;
    const said = `${declaration.label} (${sheet} ${place})`.replaceAll('"', "");
    const isBlank = (values[index] ?? null) === null;
    return {
      formula: `IF(ISBLANK(${at}),HYPERLINK("#'${sheet}'!${place}","${said}"),"")`,
      value: isBlank ? said : "",
    };
  });
}

/**
 * For each sheet that asks, what its rows still need: tables in which somebody has begun a row that is not
 * complete, or typed what breaks a rule, each with the words that stand beside the row.
 */
export function rowLines(model: Model, values: readonly Value[]): LiveLine[] {
  const asking = new Set((model.template.asks ?? []).map(({ name }) => name));
  const bySheet = new Map<string, { heading: string; status: string; told: string[] }[]>();
  for (const { block, sheet } of model.placed) {
    const table = asking.has(sheet) ? tableShown(block) : undefined;
    if (table?.filled === undefined) continue;
    const where = block.kind === "part" ? sheet : undefined;
    const own = Object.values(table.columns)[0]?.kind === "input";
    if (!own || inputsOn(table, where).length === 0) continue;
    const key = statusKey(where);
    const told = columnOf(model, table.name, key).cells.map(({ index }) => values[index]);
    const [heading = ""] = block.heading.split(",");
    const found = bySheet.get(sheet) ?? [];
    found.push({
      heading,
      status: `${table.name}.${key}`,
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
