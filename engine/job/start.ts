import { inUnit } from "../template/compile.js";
import type { InputDeclaration, InputValue, TableBlock } from "../template/declare.js";
import { ruleInWords } from "../template/implied.js";
import type { Model } from "../template/model.js";
import { hasOwnRows } from "../template/own-rows.js";
import { unitOf } from "../units/quantity.js";
import { askedFor } from "./asked-for.js";
import type { JobRecord, RowValues } from "./record.js";

/**
 * A new job record for a template: every input with its default (null where it must
 * be given), the rows that tables open with, and a guide to what each means.
 */
export function newJob(model: Model, job: string, office = "office-book.xlsx"): JobRecord {
  const inputs: Record<string, InputValue | null | RowValues[]> = {};
  const guide: Record<string, unknown> = {};
  for (const block of askedFor(model)) {
    if (block.kind === "lines") {
      for (const [name, cell] of Object.entries(block.cells)) {
        if (cell.kind !== "input") continue;
        inputs[name] = usual(cell, model);
        guide[name] = meaning(cell, model);
      }
    }
    if (block.kind === "table") {
      const columns = inputColumns(block);
      if (columns.length === 0) continue;
      guide[block.name] = {
        means: `${block.heading}; up to ${block.rows} rows${hasOwnRows(block) ? "; the rows given are all there are" : ""}`,
        columns: Object.fromEntries(columns.map(([key, cell]) => [key, meaning(cell, model)])),
      };
      const rows = block.data ?? [];
      if (rows.length > 0)
        Object.assign(guide[block.name] as object, { rows: labelled(block, model) });
      // rows that a person can tell apart by their own inputs stand in the record; others only in the guide
      const first = Object.values(block.columns)[0];
      inputs[block.name] =
        first?.kind === "input" && rows.length > 0
          ? rows.map((row) => rowOf(columns, model, row))
          : Array.from({ length: block.opening ?? 0 }, () => rowOf(columns, model, {}));
    }
  }
  const { name, version } = model.template;
  return {
    rillbook: 1,
    job,
    template: name,
    version,
    units: model.system,
    office,
    inputs,
    guide,
    trail: [],
  };
}

const inputColumns = (block: TableBlock) =>
  Object.entries(block.columns).flatMap(([key, cell]) =>
    cell.kind === "input" ? [[key, cell] as const] : [],
  );

function rowOf(
  columns: readonly (readonly [string, InputDeclaration])[],
  model: Model,
  row: Readonly<Record<string, InputValue>>,
): RowValues {
  return Object.fromEntries(
    columns.map(([key, cell]) => {
      const value = row[key] ?? cell.default;
      return [key, value === undefined ? null : inUnit(value, cell.quantity, model.system)];
    }),
  );
}

/** The rows that a template fills in by itself: give rows in the same order to change them. */
function labelled(block: TableBlock, model: Model): unknown {
  return (block.data ?? []).map((row) =>
    Object.fromEntries(
      Object.entries(row).map(([key, value]) => {
        const cell = block.columns[key];
        return [key, cell === undefined ? value : inUnit(value, cell.quantity, model.system)];
      }),
    ),
  );
}

function usual(cell: InputDeclaration, model: Model): InputValue | null {
  return cell.default === undefined ? null : inUnit(cell.default, cell.quantity, model.system);
}

function meaning(cell: InputDeclaration, model: Model): Record<string, unknown> {
  const unit = unitOf(cell.quantity, model.system).name;
  const isNumber = cell.quantity.kind === "number";
  return {
    means: [cell.label, cell.note].filter(Boolean).join(". "),
    ...(unit === "" || cell.quantity.kind === "date" ? {} : { unit }),
    ...(isNumber ? { rule: ruleInWords(cell, model.system) } : {}),
    ...(cell.quantity.percent ? { written: "as a share: 0.2 is 20%" } : {}),
    ...(cell.choices === undefined ? {} : { choices: cell.choices }),
    ...(cell.default === undefined ? {} : { default: usual(cell, model) }),
    ...(cell.optional ? { optional: true } : {}),
  };
}
