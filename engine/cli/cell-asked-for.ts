import { addressOf } from "../address.js";
import type { OpenedJob } from "../audit/open.js";
import { RillbookError } from "../errors.js";
import { nearName } from "../formula/near-name.js";
import { suggestion } from "../formula/suggest.js";
import type { Cell, Model, Table } from "../template/model.js";
import { placeGiven, placeInTemplate, standingAt } from "../template/standing-at.js";

/**
 * The cell, column or table that a name on the command line means: a name in any case, or the place of a
 * cell (`Labor!F21`) as the workbook has it, else as the template puts it. The name is as the model knows it.
 *
 * @param tables whether tables may be asked for
 * @throws RillbookError `name-unknown`, with the name that is near, or whose label was given
 */
export function askedFor(
  job: Pick<OpenedJob, "model" | "at">,
  given: string,
  tables = true,
): string {
  const { model } = job;
  const place = placeGiven(given);
  if (place !== undefined) return idAt(job, given, place);
  const name = given.toLowerCase();
  const [table = "", key = ""] = name.split(".");
  const isColumn = model.tables.get(table)?.columns.has(key) ?? false;
  if (model.byId.has(name) || isColumn || (tables && model.tables.has(name))) return name;
  throw unknown(model, given, tables);
}

function idAt(
  { model, at }: Pick<OpenedJob, "model" | "at">,
  given: string,
  { sheet, place }: { readonly sheet: string; readonly place: string },
): string {
  const here = (cell: Cell): string | undefined => {
    if (at === undefined) return placeInTemplate(cell);
    const match = at.get(cell.id);
    return match === undefined ? undefined : `${match.sheet}!${match.address}`;
  };
  const cell = standingAt(model, place, here);
  if (cell !== undefined) return cell.id;
  const sheets = model.sheets.map(({ name }) => name);
  if (!sheets.some((one) => one.toLowerCase() === sheet.toLowerCase())) {
    throw new RillbookError(
      "name-unknown",
      `Template ${model.template.name} has no sheet "${sheet}".${suggestion(sheet, sheets)} Its sheets are ${sheets.join(", ")}.`,
    );
  }
  throw new RillbookError(
    "name-unknown",
    `No input or figure of template ${model.template.name} stands at ${given}. Give the place of one, as Sheet!B12, or its name: "rillbook names" lists all.`,
  );
}

/** Of a place without its sheet, the places on all sheets that hold something. */
function withoutSheet(model: Model, given: string): string | undefined {
  const bare = given.replaceAll("$", "").toUpperCase();
  if (!/^[A-Z]{1,3}\d+$/.test(bare)) return undefined;
  const there = model.cells.filter(
    ({ column, line, implied }) => !implied && addressOf(column, line) === bare,
  );
  // single figures are asked for more than rows
  const inOrder = [...there].sort((a, b) => Number(a.row ?? 0) - Number(b.row ?? 0));
  const some = inOrder.slice(0, 5).map(({ sheet, id }) => `${sheet}!${bare} is ${id}`);
  const said = some.length === 0 ? "" : `: ${some.join(", ")}`;
  return `${given} is a place without its sheet. Name it with its sheet, as in Sheet!${bare}${said}.`;
}

function unknown(model: Model, given: string, tables: boolean): RillbookError {
  const cells = model.cells.filter(({ implied, row = 1 }) => !implied && row === 1);
  const labelled = cells.filter(({ declaration: { label } }) => bare(label) === bare(given));
  const meant = [...new Set(labelled.map(({ name }) => name))].slice(0, 3);
  const known = [...cells.map(({ name }) => name), ...(tables ? model.tables.keys() : [])];
  const advice =
    meant.length > 0
      ? ` That is the label of ${meant.map((name) => `"${name}"`).join(", ")}.`
      : nearName(given, known);
  const trouble =
    rowTrouble(model, given) ??
    tableTrouble(model, given) ??
    withoutSheet(model, given) ??
    `The name "${given}" is not in template ${model.template.name}.${advice}`;
  return new RillbookError("name-unknown", `${trouble} "rillbook names" lists all.`);
}

/** What is wrong with a row that is asked for, where its table or its name is known. */
function rowTrouble(model: Model, given: string): string | undefined {
  const [, name = "", row = ""] = /^(.+)\[(-?\d+)\]$/.exec(given.toLowerCase()) ?? [];
  if (model.byId.has(name)) return `${name} is a single figure without rows. Ask for ${name}.`;
  const [table = "", key = ""] = name.split(".");
  const found = model.tables.get(table);
  if (found === undefined) return undefined;
  if (key === "")
    return `${given} is a whole row. Name a column of it, as in ${aColumn(found)}[${row}].`;
  if (!found.columns.has(key)) return undefined;
  const { rows } = found.block;
  const are = rows === 1 ? "its one row is 1" : `its rows are 1 to ${rows}`;
  return `${name} has no row ${row}: ${are}. Ask for one of them, or for the column: ${name}.`;
}

/** A table where only a cell or a column can be shown. */
function tableTrouble(model: Model, given: string): string | undefined {
  const table = model.tables.get(given.toLowerCase());
  if (table === undefined) return undefined;
  return `The name "${given}" is not in template ${model.template.name} as a cell or a column: it is a table. Name a column of it, such as ${aColumn(table)}.`;
}

/** A column of a table for an example: the last that is strong, else the first. */
function aColumn({ block, columns }: Table): string {
  const strong = Object.entries(block.columns).findLast(([, one]) => "strong" in one && one.strong);
  return `${block.name}.${strong?.[0] ?? [...columns.keys()][0]}`;
}

/** A label without what names have no signs for: `total_man_hours` is that of "Total man-hours". */
const bare = (text: string): string =>
  text
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, " ")
    .trim();
