import type { InputValues, JobRecord, RowValues } from "../../engine/job/record.js";
import { inUnit } from "../../engine/template/compile.js";
import type { InputDeclaration, InputValue } from "../../engine/template/declare.js";
import type { Model } from "../../engine/template/model.js";

/** A record in US units with its numbers brought to SI, as a person would write them there. */
export function inSi(model: Model, job: JobRecord): JobRecord {
  const brought = (declaration: InputDeclaration, value: InputValue | null) =>
    value === null || declaration.quantity.kind === "date"
      ? value
      : inUnit(value, declaration.quantity, "si");
  const inputs = Object.entries(job.inputs).map(([name, value]) => {
    if (!Array.isArray(value)) {
      const cell = model.byId.get(name)?.declaration as InputDeclaration;
      return [name, brought(cell, value as InputValue | null)];
    }
    const columns = model.tables.get(name)?.columns;
    const rows = (value as RowValues[]).map((row) =>
      Object.fromEntries(
        Object.entries(row).map(([key, one]) => [
          key,
          brought(columns?.get(key)?.declaration as InputDeclaration, one),
        ]),
      ),
    );
    return [name, rows];
  });
  return { ...job, units: "si", inputs: Object.fromEntries(inputs) as InputValues };
}
