import { RillbookError } from "../errors.js";
import { readText } from "../files.js";
import { suggestion } from "../formula/suggest.js";
import type { Template } from "../template/template.js";
import { type UnitSystem, unitSystems } from "../units/quantity.js";
import { parsedJson } from "./json.js";

/** A record as it stands in its file, before its inputs are checked. */
export interface RawJob {
  readonly file: string;
  readonly record: unknown;
  readonly template: Template;
  readonly units: UnitSystem;
}

/**
 * Reads a job record and finds the template it belongs to.
 * Throws RillbookError for a missing file, broken JSON, an unknown template, version or unit system.
 */
export async function readJob(file: string, templates: readonly Template[]): Promise<RawJob> {
  return rawJob(await readText(file, "job record"), templates, file);
}

/** The text of a record that must be there. Throws RillbookError. */
export function mustBeThere(text: string | undefined, file: string): string {
  if (text !== undefined) return text;
  throw new RillbookError(
    "file-unreadable",
    `The job record ${file} does not exist. Check the name.`,
  );
}

/** The same from the file's text. */
export function rawJob(text: string, templates: readonly Template[], file: string): RawJob {
  if (text.startsWith("PK")) throw isWorkbook(file);
  const record = parsedJson(text, file);
  if (typeof record !== "object" || record === null || Array.isArray(record)) {
    throw new RillbookError(
      "job-invalid",
      `${file} is not a job record: it must be one JSON object.`,
    );
  }
  const { template, version, units } = record as Record<string, unknown>;
  if (template === undefined && !("rillbook" in record)) {
    throw new RillbookError(
      "job-invalid",
      `${file} is JSON, but not a job record: it names neither rillbook nor a template. A job begins with rillbook start yard.xlsx.`,
    );
  }
  return {
    file,
    record: withOfficeBook(record as Record<string, unknown>),
    template: templateFor(template, version, templates, file),
    units: systemFor(units, file),
  };
}

/** The office book was a price book once, which older records name by `prices`. */
function withOfficeBook(record: Record<string, unknown>): Record<string, unknown> {
  if (!("prices" in record) || "office" in record) return record;
  return Object.fromEntries(
    Object.entries(record).map(([key, value]) => [key === "prices" ? "office" : key, value]),
  );
}

/** Commands that want a record, given a workbook. */
const isWorkbook = (file: string): RillbookError =>
  new RillbookError(
    "record-is-workbook",
    `${file} is a workbook, and this command works on a job record. Bring the workbook's inputs into one first: rillbook take ${file} -o <job record> --by <who>.`,
  );

/**
 * The newest version of the template of that name, as an option names it; without a name, of the
 * first one. Throws RillbookError, with what there is.
 */
export function newestTemplate(
  asked: string | undefined,
  templates: readonly Template[],
  option: string,
): Template {
  const name = asked ?? templates[0]?.name;
  const versions = templates.filter((one) => one.name === name).map(({ version }) => version);
  return templateFor(name, Math.max(...versions), templates, option);
}

/** The template of that name and version. Throws RillbookError, with what there is. */
export function templateFor(
  name: unknown,
  version: unknown,
  templates: readonly Template[],
  file: string,
): Template {
  const named = templates.filter((one) => one.name === name);
  if (named.length === 0) {
    const known = [...new Set(templates.map((one) => one.name))];
    throw new RillbookError(
      "template-unknown",
      `${file} names ${name === undefined ? "no template" : `the template ${JSON.stringify(name)}, which is not known`}.${suggestion(String(name), known)} There are: ${known.join(", ")}. One of the office's own is brought by its file: --template <file>.`,
    );
  }
  const found = named.find((one) => one.version === version);
  if (found !== undefined) return found;
  const versions = named.map((one) => one.version).join(", ");
  throw new RillbookError(
    "template-version",
    `${file} ${version === undefined ? "names no version" : `was made for version ${JSON.stringify(version)}`} of the template ${name}; this program has version ${versions}. Use a program that has it, or bring the inputs over to a new job.`,
  );
}

/** The system of units of that name. Throws RillbookError. */
export function systemFor(units: unknown, file: string): UnitSystem {
  const found = unitSystems.find((one) => one === units);
  if (found !== undefined) return found;
  throw new RillbookError(
    "units-unknown",
    `${file}: units ${units === undefined ? "is missing" : `is ${JSON.stringify(units)}`}, but must be "us" or "si". Correct the value.`,
  );
}
