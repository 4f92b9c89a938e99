import { RillbookError } from "../errors.js";
import { nearName } from "../formula/near-name.js";
import { referencesOf } from "../formula/tree.js";
import { inputPlanOf } from "../job/input-plan.js";
import type { Cell, Model } from "../template/model.js";
import { placeGiven, standingAt } from "../template/standing-at.js";

/** `name=value` as asked for: one input, or a whole row to be taken out. */
export type Assignment =
  | { readonly kind: "input"; readonly cell: Cell; readonly text: string }
  | { readonly kind: "row"; readonly table: string; readonly row: number };

/**
 * Reads `lift=8`, `runs.length[2]=3.5`, `lift=` (back to the default, or blank) or `runs[3]=`
 * (the row taken out). Throws RillbookError for a name that is no input.
 */
export function readAssignment(model: Model, written: string): Assignment {
  const at = written.indexOf("=");
  if (at < 1) {
    throw new RillbookError(
      "assignment-unclear",
      `"${written}" is not of the form name=value, as in lift=8 or runs.length[2]=3.5. Write it so, in quotes where it has spaces.`,
    );
  }
  const name = written.slice(0, at).trim();
  const text = written.slice(at + 1).trim();
  const row = /^([^.[\]]+)\[(\d+)\]$/.exec(name);
  const table = row === null ? undefined : model.tables.get(row[1] as string);
  if (row !== null && table !== undefined) {
    if (text !== "" || Number(row[2]) < 1 || Number(row[2]) > table.block.rows) {
      throw new RillbookError(
        "assignment-unclear",
        `${name} is a whole row of a table of ${table.block.rows} rows: only ${name.replace(/\d+/, "n")}= is possible, which takes row n out. To change it, name a column, as in ${someColumn(model, table.name)}[${row[2]}]=value.`,
      );
    }
    return { kind: "row", table: table.name, row: Number(row[2]) };
  }
  return { kind: "input", cell: inputNamed(model, name), text };
}

function inputNamed(model: Model, name: string): Cell {
  const cell = model.byId.get(name);
  if (cell?.declaration.kind === "input") return cell;
  const known = inputPlanOf(model).inputs.map((input) => input.cell);
  if (known.some((one) => one.name === name)) {
    throw new RillbookError(
      "assignment-unclear",
      `${name} is a column: say which row, as in ${name}[1]=value.`,
    );
  }
  const [, column = "", table = "", row = ""] = /^((.*?)\..*)\[(\d+)\]$/.exec(name) ?? [];
  const rows = known.filter((one) => one.name === column).length;
  if (rows > 0) {
    throw new RillbookError(
      "name-unknown",
      `${name} is row ${row}, but the table has rows 1 to ${rows}. Use one that is blank; where all are full, take out one that is not needed (${table}[n]=), or give what is left to a job of its own.`,
    );
  }
  const place = placeGiven(name)?.place;
  const standing = place === undefined ? undefined : standingAt(model, place);
  if (standing !== undefined) throw byPlace(model, name, standing);
  if (cell !== undefined) {
    const what = cell.declaration.kind === "book" ? "from the office book" : "a formula or fixed";
    throw new RillbookError(
      "name-no-input",
      `${name} (${cell.declaration.label}) is ${what}, and only inputs can be set.${movedBy(model, cell)} "rillbook names" lists the inputs.`,
    );
  }
  const names = [...new Set(known.map((one) => one.name))];
  const near = model.tables.get(name.split(".")[0] ?? "");
  const advice = nearName(name, names) || inputsOf(near?.block.name, names);
  throw new RillbookError(
    "name-unknown",
    `The name "${name}" is not an input of template ${model.template.name}.${advice} "rillbook names" lists all.`,
  );
}

const byPlace = (model: Model, place: string, cell: Cell): RillbookError => {
  const { id, declaration } = cell;
  return declaration.kind === "input"
    ? new RillbookError(
        "assignment-unclear",
        `${place} is the place of ${id} (${declaration.label}) in a workbook. In a record give it by its name: ${id}=value.`,
      )
    : new RillbookError(
        "name-no-input",
        `${place} is the place of ${id} (${declaration.label}), and only inputs can be set.${movedBy(model, cell)} "rillbook names" lists the inputs.`,
      );
};

const mostMoving = 4;

/** An input in the same measure, or a share: words and sizes of things move a price, but nobody sets them for it. */
const isAlike = ({ declaration: { kind, quantity }, unit, implied }: Cell, of: Cell): boolean =>
  kind === "input" &&
  !implied &&
  quantity.kind === "number" &&
  (quantity.percent === true || unit.name === of.unit.name);

/** The single inputs nearest to a figure, by the formulas between: what somebody who wants another figure can set. */
function movedBy(model: Model, cell: Cell): string {
  if (cell.spoken === undefined) return "";
  const found: string[] = [];
  const seen = new Set([cell]);
  for (const one of seen) {
    for (const reference of one.spoken === undefined ? [] : referencesOf(one.spoken)) {
      if (reference.kind !== "scalar") continue;
      const next = model.byId.get(reference.name);
      if (next === undefined || seen.has(next)) continue;
      seen.add(next);
      if (isAlike(next, cell)) found.push(next.id);
    }
    if (found.length >= mostMoving) break;
  }
  const inputs = found.slice(0, mostMoving).join(", ");
  return inputs === ""
    ? ' See what moves it: "rillbook trace".'
    : ` Inputs nearest to it: ${inputs}; "rillbook weigh" tells what moves the price most.`;
}

/** The inputs of a table, where none is near what was asked for. */
function inputsOf(table: string | undefined, names: readonly string[]): string {
  const own = table === undefined ? [] : names.filter((one) => one.startsWith(`${table}.`));
  return own.length === 0 ? "" : ` Inputs of ${table}: ${own.join(", ")}.`;
}

const someColumn = (model: Model, table: string): string =>
  inputPlanOf(model).inputs.find((one) => one.table === table)?.cell.name ?? `${table}.column`;
