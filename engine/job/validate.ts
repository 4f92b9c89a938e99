import type { ErrorObject } from "ajv";
import { RillbookError } from "../errors.js";
import { suggestion } from "../formula/suggest.js";
import type { Cell, Model } from "../template/model.js";
import { checkedInputsOf } from "./checked-inputs.js";
import { serialOf } from "./date.js";
import { JobError } from "./job-error.js";
import { withNamedChoices } from "./named-choices.js";
import { rangeFaults } from "./ranges.js";
import type { JobRecord } from "./record.js";
import { withTakenTexts } from "./record-texts.js";
import { typedValue } from "./typed-value.js";
import { validatorFor } from "./validator.js";

/**
 * Checks a parsed job record against the template's schema, and gives it with its texts as they are kept.
 * Throws JobError naming each path, value, rule and what to do.
 */
export function validateJob(model: Model, given: unknown, file: string): JobRecord {
  const { record: taken, faults: textFaults } = withTakenTexts(given);
  const record = withNamedChoices(model, taken);
  if (textFaults.length > 0) {
    throw new JobError(
      "job-invalid",
      `The job record ${file} cannot be used:`,
      textFaults.map(({ pointer, sentence }) => `${readablePath(pointer)} ${sentence}`),
    );
  }
  const validate = validatorFor(model);
  if (!validate(record)) {
    const faults = (validate.errors ?? []).map((error) => sentence(error, model));
    throw new JobError("job-invalid", `The job record ${file} cannot be used:`, [
      ...new Set(faults),
    ]);
  }
  const job = record as unknown as JobRecord;
  const faults = [...impossibleDates(model, job), ...rangeFaults(model, job)];
  if (faults.length > 0) {
    throw new JobError("job-invalid", `The job record ${file} cannot be used:`, faults);
  }
  return job;
}

/** `inputs.runs.length[2]` as names are written everywhere, rows counted from 1 as on the worksheet. */
function readablePath(pointer: string): string {
  const [, table, row, column] = /^\/inputs\/([^/]+)\/(\d+)\/([^/]+)$/.exec(pointer) ?? [];
  if (column !== undefined) return `inputs.${table}.${column}[${Number(row) + 1}]`;
  return pointer
    .split("/")
    .slice(1)
    .map((part) => (/^\d+$/.test(part) ? `[${Number(part) + 1}]` : `.${part}`))
    .join("")
    .replace(/^\./, "");
}

function sentence(error: ErrorObject, model: Model): string {
  const path = readablePath(error.instancePath) || "the record";
  const value = JSON.stringify(error.data) ?? "nothing";
  const shown = value.length > 60 ? `${value.slice(0, 57)}...` : value;
  const schema = error.parentSchema as { description?: string } | undefined;
  const meaning = schema?.description === undefined ? "" : ` (${schema.description})`;
  switch (error.keyword) {
    case "additionalProperties": {
      const name = String(error.params.additionalProperty);
      const known = Object.keys((error.parentSchema as { properties: object }).properties);
      if (/^\/inputs\/[^/]+\/\d+$/.test(error.instancePath)) {
        const place = readablePath(`${error.instancePath}/${name.replaceAll("/", "~1")}`);
        return `${place}: the column "${name}" is not known to template ${model.template.name}.${suggestion(name, known)}`;
      }
      return `${path}: the name "${name}" is not known to template ${model.template.name}.${suggestion(name, known)}`;
    }
    case "required":
      return `${path}: "${error.params.missingProperty}" is missing. Add it.`;
    case "maxItems":
      return `${path}: ${(error.data as unknown[]).length} rows, but the table holds ${error.params.limit}${meaning}. Join rows, or split the job.`;
    case "type":
      return `${path} is ${shown}, but must be ${[error.params.type]
        .flat()
        .filter((one: string) => one !== "null")
        .map((one: string) => typeInWords(one, error.data, cellAt(model, path)))
        .join(" or ")}${meaning}. Correct the value.`;
    case "minimum":
    case "maximum":
      return `${path} is ${shown}${inWords(error.data, model, path)}, but must be ${error.params.comparison} ${error.params.limit}${shareHint(error.data, isShare(model, path))}${meaning}. Correct the value.`;
    case "enum": {
      const allowed = (error.params.allowedValues as unknown[]).filter((one) => one !== null);
      return `${path} is ${shown}, but must be one of: ${allowed.join(", ")}. Choose one.`;
    }
    case "const":
      return `${path} is ${shown}, but must be ${JSON.stringify(error.params.allowedValue)}. Correct the value, or name the template it belongs to.`;
    case "maxLength":
      return `${path} has ${(error.data as string).length} characters; ${error.params.limit} is the most${meaning}. Shorten it.`;
    case "pattern":
      return `${path} is ${shown}, but must be a date like 2026-05-31${meaning}. Correct the value.`;
    default:
      return `${path} is ${shown}: ${error.message}${meaning}. Correct the value.`;
  }
}

function typeInWords(type: string, given: unknown, cell: Cell | undefined): string {
  switch (type) {
    case "number":
    case "integer":
      return `${type === "integer" ? "a whole number" : "a number"}${numberHint(given, cell)}`;
    case "boolean":
      return "true or false";
    case "string":
      return "text";
    case "array":
      return "a list of rows";
    default:
      return `an ${type}`;
  }
}

/** What to write for a text with a unit in it: the number in the unit of the cell, never the digits as they stand. */
function numberHint(given: unknown, cell: Cell | undefined): string {
  if (typeof given !== "string" || cell === undefined) return "";
  const share = cell.declaration.quantity.percent;
  const own = share ? " as a share of 1" : cell.unit.name === "" ? "" : ` of ${cell.unit.name}`;
  try {
    const value = typedValue(cell, given.trim());
    return `${own}${typeof value === "number" ? `: write ${value}` : ""}, without quotes`;
  } catch (error) {
    if (!(error instanceof RillbookError)) throw error;
    return `${own}, without quotes`;
  }
}

/** `, for 20% write 0.2`, for a share that was given as a percentage. */
function shareHint(given: unknown, share: boolean): string {
  if (!share || typeof given !== "number" || given < 1) return "";
  return `: for ${given}% write ${Number((given / 100).toPrecision(6))}`;
}

/** ` (765%)`: a share as people say it. */
const inWords = (given: unknown, model: Model, path: string): string =>
  typeof given === "number" && isShare(model, path)
    ? ` (${Number((given * 100).toPrecision(6))}%)`
    : "";

const cellAt = (model: Model, path: string): Cell | undefined =>
  model.byId.get(path.replace(/^inputs\./, ""));

const isShare = (model: Model, path: string): boolean =>
  cellAt(model, path)?.declaration.quantity.percent === true;

function impossibleDates(model: Model, job: JobRecord): string[] {
  const faults: string[] = [];
  for (const cell of checkedInputsOf(model).dates) {
    const given = givenFor(job, cell.name, cell.row);
    if (typeof given === "string" && serialOf(given) === undefined) {
      faults.push(`inputs.${cell.id} is "${given}", but there is no such day. Correct the date.`);
    }
  }
  return faults;
}

/** What a record gives for an input: by name, or by column and row. */
export function givenFor(job: JobRecord, name: string, row: number | undefined): unknown {
  if (row === undefined) return job.inputs[name] ?? undefined;
  const [tableName = "", key = ""] = name.split(".");
  const rows = job.inputs[tableName];
  return Array.isArray(rows) ? (rows[row - 1]?.[key] ?? undefined) : undefined;
}
