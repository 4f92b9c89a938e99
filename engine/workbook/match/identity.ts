import type { WorkbookContent } from "../read/content.js";

/** What a workbook says of itself in its custom properties; absent where it does not say. */
export interface WorkbookIdentity {
  readonly job?: string;
  readonly template?: string;
  readonly version?: number;
  /** Of a template of an office's own: the name of its file, and the mark of what it says. */
  readonly templateFile?: string;
  readonly templateMark?: string;
  readonly units?: string;
  readonly about?: string;
  readonly book?: string;
  readonly bookAsOf?: string;
  readonly bookMark?: string;
  /** Path of the office book as the job record named it. */
  readonly office?: string;
  /** Hash of the last entry of the trail, or "none". */
  readonly trailHead?: string;
  /** Mark of the inputs as the workbook was written. */
  readonly inputsMark?: string;
  /** Mark of the office-book figures as the workbook was written. */
  readonly pricesMark?: string;
}

/** The custom properties that a workbook of rillbook carries. */
export const identityProperties = {
  job: "rillbook job",
  template: "rillbook template",
  version: "rillbook version",
  templateFile: "rillbook template file",
  templateMark: "rillbook template mark",
  units: "rillbook units",
  about: "rillbook about",
  book: "rillbook office book",
  bookAsOf: "rillbook office book as of",
  bookMark: "rillbook office book mark",
  office: "rillbook office book path",
  trailHead: "rillbook trail head",
  inputsMark: "rillbook inputs mark",
  pricesMark: "rillbook office mark",
} as const satisfies Record<keyof WorkbookIdentity, string>;

/** Reads the identity of a workbook. Letter case of the property names does not count. */
export function identityOfWorkbook(content: Pick<WorkbookContent, "properties">): WorkbookIdentity {
  const properties = new Map(
    [...content.properties.custom].map(([name, value]) => [name.toLowerCase(), value]),
  );
  const found: Record<string, string | number> = {};
  for (const [key, name] of Object.entries(identityProperties)) {
    const value = properties.get(name);
    if (value === undefined) continue;
    // a version that is no whole number stays unknown to every template
    found[key] = key === "version" ? Number(value) : value;
  }
  return found;
}
