import { dirname, resolve } from "node:path";
import { inputPlanOf } from "../job/input-plan.js";
import { rawJob } from "../job/read.js";
import type { InputValues, JobRecord, RowValues } from "../job/record.js";
import { validateJob } from "../job/validate.js";
import { inputValues } from "../job/values.js";
import { JobValues } from "../job/values-again.js";
import type { OfficeValues } from "../template/book-layout.js";
import type { Model } from "../template/model.js";
import { modelOf } from "../template/models.js";
import type { Template } from "../template/template.js";
import type { OldJob } from "./old-job.js";

/** A job record as an old job. Throws RillbookError with what is wrong in it. */
export function oldRecord(text: string, file: string, templates: readonly Template[]): OldJob {
  const raw = rawJob(text, templates, file);
  const model = modelOf(raw.template, raw.units);
  // a long trail takes time and memory, and a rerun asks nothing of it
  const { trail: _, ...record } = raw.record as Record<string, unknown>;
  const job = validateJob(model, record, file);
  const own = new JobValues(model, job, (office) => inputValues(model, job, office));
  return {
    source: "record",
    job: job.job,
    model,
    inputs: (wanted, office) =>
      wanted === model
        ? { values: own.under(office), leftOut: [] }
        : inputsFor(wanted, model, job, file, office),
    ...(job.office === undefined ? {} : { office: resolve(dirname(file), job.office) }),
  };
}

/** The inputs of a record under its own model, or brought over to another version by name. */
export function inputsFor(
  wanted: Model,
  own: Model,
  job: JobRecord,
  file: string,
  office: OfficeValues,
) {
  if (wanted === own) return { values: inputValues(own, job, office), leftOut: [] };
  const { inputs, leftOut } = known(wanted, job.inputs);
  const { ranges: _, ...rest } = job;
  const moved = { ...rest, version: wanted.template.version, inputs };
  return { values: inputValues(wanted, validateJob(wanted, moved, file), office), leftOut };
}

/** The inputs that a model has, and the names of the others. */
function known(model: Model, given: InputValues): { inputs: InputValues; leftOut: string[] } {
  const names = new Set(inputPlanOf(model).inputs.flatMap(({ cell }) => [cell.name, cell.table]));
  const leftOut = new Set<string>();
  const keep = (name: string): boolean => {
    if (!names.has(name)) leftOut.add(name);
    return names.has(name);
  };
  const inputs: Record<string, InputValues[string]> = {};
  for (const [name, value] of Object.entries(given)) {
    if (!keep(name)) continue;
    inputs[name] = Array.isArray(value)
      ? (value as (RowValues | null)[]).map((row) =>
          row === null
            ? null
            : Object.fromEntries(Object.entries(row).filter(([key]) => keep(`${name}.${key}`))),
        )
      : value;
  }
  return { inputs, leftOut: [...leftOut] };
}
