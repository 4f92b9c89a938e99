import type { InputDeclaration } from "../template/declare.js";
import { ruleInWords } from "../template/implied.js";
import type { Model } from "../template/model.js";
import { unitOf } from "../units/quantity.js";
import { firstFields } from "./missing.js";
import type { JobRecord, RowValues } from "./record.js";

/**
 * A new job record for a template: only what a job must give, in the order in which it is asked for, and a
 * guide to what each means. All else has a default of the office or of the template.
 *
 * @param office path of the office book; the starter book of the program holds where it is left out
 */
export function newJob(model: Model, job: string, office?: string): JobRecord {
  const inputs: Record<string, null | RowValues[]> = {};
  const guide: Record<string, Record<string, unknown>> = {};
  for (const { name, table, row = 1, declaration } of firstFields(model)) {
    const said = meaning(declaration as InputDeclaration, model);
    guide[name] ??= said;
    if (table === undefined) {
      inputs[name] = null;
      continue;
    }
    const rows = (inputs[table] ?? []) as RowValues[];
    inputs[table] = rows;
    rows[row - 1] = { ...rows[row - 1], [name.slice(table.length + 1)]: null };
  }
  const { name, version } = model.template;
  return {
    rillbook: 1,
    job,
    template: name,
    version,
    units: model.system,
    ...(office === undefined ? {} : { office }),
    inputs,
    guide,
    trail: [],
  };
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
  };
}
