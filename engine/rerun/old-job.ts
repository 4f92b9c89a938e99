import { createHash } from "node:crypto";
import { extname } from "node:path";
import { readBytes } from "../files.js";
import type { Value } from "../formula/value.js";
import type { OfficeValues } from "../template/book-layout.js";
import type { Model } from "../template/model.js";
import type { Template } from "../template/template.js";
import type { BuiltFigures } from "./built-figures.js";
import type { Figures } from "./lines.js";

/** A job as its file holds it, whatever the kind of file. */
export interface OldJob {
  readonly source: "record" | "workbook";
  readonly job: string;
  /** The model of the version it was made with. */
  readonly model: Model;
  /**
   * Its inputs for that model or another version of it under an office book, whose rules hold where the
   * job does not override them; office-book cells blank; and the names of inputs that the other version
   * does not have. Throws JobError.
   */
  readonly inputs: (
    model: Model,
    office: OfficeValues,
  ) => { readonly values: Value[]; readonly leftOut: string[] };
  /** The path of the office book that the record names. */
  readonly office?: string;
  /** What a workbook says of itself, as it was last calculated. */
  readonly said?: Said;
  /** The inputs of a workbook with the office-book rows that it carries, where asked for. */
  readonly priced?: readonly Value[];
}

export interface Said {
  readonly figures: Figures;
  /** The checks that held. */
  readonly passed: ReadonlySet<string>;
  /** Of a job that is told as built. */
  readonly built?: BuiltFigures;
}

/** The content of a file and its mark. Throws RillbookError where it cannot be read. */
export async function readContent(file: string): Promise<{ bytes: Buffer; mark: string }> {
  const bytes = await readBytes(file, "job");
  return { bytes, mark: createHash("sha256").update(bytes).digest("hex").slice(0, 16) };
}

export const isWorkbook = (file: string): boolean => extname(file).toLowerCase() === ".xlsx";

/** The newest version of a template among those there are. */
export function newestOf(template: Template, templates: readonly Template[]): Template {
  return templates
    .filter(({ name }) => name === template.name)
    .reduce((newest, one) => (one.version > newest.version ? one : newest), template);
}
