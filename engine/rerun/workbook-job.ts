import { RillbookError } from "../errors.js";
import { CellError, type ErrorCode, type Value } from "../formula/value.js";
import { writtenDate } from "../job/date.js";
import { inputPlanOf } from "../job/input-plan.js";
import { JobError } from "../job/job-error.js";
import { systemFor, templateFor } from "../job/read.js";
import type { InputValues, JobRecord, RowValues } from "../job/record.js";
import { mustBeAsWritten } from "../job/same-template.js";
import { bookCopyOf } from "../template/book-copy.js";
import type { OfficeValues } from "../template/book-layout.js";
import { checkList, holds } from "../template/checks-sheet.js";
import type { InputValue } from "../template/declare.js";
import type { Cell, Model } from "../template/model.js";
import { modelOf } from "../template/models.js";
import { type RolePlan, rolesOf } from "../template/role-plan.js";
import type { Template } from "../template/template.js";
import { takenText } from "../text/taken.js";
import { identityOfWorkbook, type WorkbookIdentity } from "../workbook/match/identity.js";
import { matchWorkbook } from "../workbook/match/match.js";
import { toldIdentity } from "../workbook/match/told-identity.js";
import type {
  CellContent,
  CellValue,
  DocumentProperties,
  WorkbookContent,
} from "../workbook/read/content.js";
import type { KeptParts } from "../workbook/read/kept-parts.js";
import { cellIn } from "../workbook/read/lookup.js";
import { readWorkbook } from "../workbook/read/read.js";
import { type BuiltFigures, builtCells, builtFigures, isBuilt } from "./built-figures.js";
import type { OldJob, Said } from "./old-job.js";
import { placesOf } from "./places.js";
import { inputsFor } from "./record-job.js";
import { figuresOf } from "./role-plan.js";

type ContentOf = (cell: Cell) => CellContent | undefined;

const daysOf1904 = 1462;

export interface WorkbookReading {
  /** Read the prices of the office book that it carries too. */
  readonly withBook?: boolean;
  /** What was read of the workbooks before it. */
  readonly kept?: KeptParts;
}

/**
 * A workbook as an old job: its inputs, and what it said when it was last calculated. Only the
 * sheets with inputs, price and checks are read, and those with prices where asked for. Throws RillbookError for a workbook that is
 * not rillbook's, is not safe, or lacks inputs.
 */
export function oldWorkbook(
  bytes: Uint8Array,
  file: string,
  templates: readonly Template[],
  { withBook = false, ...reading }: WorkbookReading = {},
): OldJob {
  let model: Model | undefined;
  let book: ReadonlySet<string> = new Set();
  const content = readWorkbook(bytes, {
    ...{ formulas: false, ...reading },
    sheets: ({ name }, common, properties) => {
      if (model === undefined) {
        model = modelFor(identityAt(bytes, properties), templates, file);
        if (withBook) book = placesOf(model, common).sheetsOf(bookCells(model).map(nameOf));
      }
      return placesOf(model, common).wanted.has(name) || book.has(name);
    },
  });
  const own = model as Model;
  const identity = identityAt(bytes, content.properties);
  const contentOf = finder(own, content, bytes);
  const values = givenValues(own, content, contentOf, file);
  const byBook = asInBook(own, values, content, contentOf);
  return {
    source: "workbook",
    job: identity.job ?? "",
    model: own,
    inputs: (other, office) =>
      other === own
        ? { values: underBook(own, values, byBook, office), leftOut: [] }
        : inputsFor(other, own, recordOf(own, values, byBook, identity), file, office),
    said: {
      ...said(own, rolesOf(own), identity, contentOf),
      ...(isBuilt(own, values) ? { built: builtSaid(own, bytes, reading) } : {}),
    },
    ...(withBook ? { priced: pricedValues(own, values, content, contentOf) } : {}),
  };
}

/** As the properties say; where a library dropped them all, as the first sheet says. */
function identityAt(bytes: Uint8Array, properties: DocumentProperties): WorkbookIdentity {
  const told = identityOfWorkbook({ properties });
  if (Object.keys(told).length > 0) return told;
  let first = true;
  const sheets = () => {
    const read = first;
    first = false;
    return read;
  };
  return toldIdentity(readWorkbook(bytes, { formulas: false, sheets })).identity;
}

function modelFor(identity: WorkbookIdentity, templates: readonly Template[], file: string): Model {
  if (identity.template === undefined) {
    throw new RillbookError(
      "workbook-foreign",
      `${file} does not say that rillbook wrote it: neither its custom properties nor its first sheet name a template. Leave it out, or make the job record again.`,
    );
  }
  const template = templateFor(identity.template, identity.version, templates, file);
  mustBeAsWritten(template, identity, file);
  return modelOf(template, systemFor(identity.units, file));
}

/** Finds cells by their names; where rows were inserted or deleted, all sheets are read and matched with one another. */
function finder(model: Model, content: WorkbookContent, bytes: Uint8Array): ContentOf {
  const places = placesOf(model, content.common);
  let matched: ReturnType<typeof matchWorkbook> | undefined;
  return (cell) => {
    const place = places.of(cell);
    if (place === undefined) return undefined;
    if (place !== "elsewhere") return cellIn(content, place);
    matched ??= matchWorkbook(readWorkbook(bytes), model);
    return matched.at.get(cell.id)?.cell;
  };
}

function givenValues(
  model: Model,
  content: WorkbookContent,
  contentOf: ContentOf,
  file: string,
): Value[] {
  const { base, inputs } = inputPlanOf(model);
  const values = [...base];
  const faults: string[] = [];
  const shift = content.date1904 ? daysOf1904 : 0;
  for (const { cell, date } of inputs) {
    const content = contentOf(cell);
    const value = content?.value ?? null;
    if (content === undefined) {
      faults.push(
        `${cell.id}: its name is missing in the workbook. Put it back, or start from a fresh copy.`,
      );
    } else if (typeof value === "object" && value !== null) {
      faults.push(`${cell.id} (${cell.declaration.label}) holds ${value.error}. Give it a value.`);
    } else if (typeof value === "string") {
      const taken = takenText(value);
      if ("text" in taken) values[cell.index] = taken.text;
      else faults.push(`${cell.id} (${cell.declaration.label}) ${taken.trouble}`);
    } else values[cell.index] = date && typeof value === "number" ? value + shift : value;
  }
  if (faults.length === 0) return values;
  throw new JobError("workbook-inputs", `The workbook ${file} cannot be used:`, faults);
}

/** The inputs, by index, that had what the office book said when the workbook was written. */
function asInBook(
  model: Model,
  values: readonly Value[],
  content: WorkbookContent,
  contentOf: ContentOf,
): ReadonlySet<number> {
  const shift = content.date1904 ? daysOf1904 : 0;
  const same = new Set<number>();
  for (const { cell, date } of inputPlanOf(model).inputs) {
    const copy = bookCopyOf(model, cell);
    const held = copy === undefined ? undefined : contentOf(copy);
    if (held === undefined) continue;
    const value = asValue(held.value);
    const said = date && typeof value === "number" ? value + shift : value;
    if (said === values[cell.index] || (said === "" && values[cell.index] === null))
      same.add(cell.index);
  }
  return same;
}

/** The inputs with the rules of another book, where the job did not override those of its own. */
function underBook(
  model: Model,
  values: readonly Value[],
  byBook: ReadonlySet<number>,
  office: OfficeValues,
): Value[] {
  const now = [...values];
  const own = ownTables(model, byBook);
  for (const { cell, table, usual, ofRow, isOpen } of inputPlanOf(model, office).inputs) {
    if (!byBook.has(cell.index) || own.has(table ?? "")) continue;
    now[cell.index] = cell.table === undefined ? usual : (ofRow ?? (isOpen ? usual : null));
  }
  return now;
}

const nameOf = ({ name }: Cell): string => name;

const bookCells = (model: Model): Cell[] =>
  model.cells.filter(({ declaration }) => declaration.kind === "book");

/** The inputs with the office-book rows that the workbook carries. */
function pricedValues(
  model: Model,
  inputs: readonly Value[],
  content: WorkbookContent,
  contentOf: ContentOf,
): Value[] {
  const values = [...inputs];
  const shift = content.date1904 ? daysOf1904 : 0;
  for (const cell of bookCells(model)) {
    const value = asValue(contentOf(cell)?.value ?? null);
    const isDate = cell.declaration.quantity.kind === "date" && typeof value === "number";
    values[cell.index] = isDate ? value + shift : value;
  }
  return values;
}

/** What the workbook showed: the results that it keeps beside its formulas. */
function said(
  model: Model,
  roles: RolePlan,
  identity: WorkbookIdentity,
  contentOf: ContentOf,
): Said {
  const figures = figuresOf(roles, (cell) => asValue(contentOf(cell)?.value ?? null));
  const listed = model.tables.get(checkList)?.columns.get("rank")?.cells ?? [];
  const passed = model.checks.filter((_, i) => holds(contentOf(listed[i] as Cell)?.value));
  const { book, bookMark } = identity;
  return {
    figures: {
      ...figures,
      from: "workbook",
      ...(book === undefined || bookMark === undefined
        ? {}
        : { book: { name: book, mark: bookMark } }),
    },
    passed: new Set(passed),
  };
}

/** What a built job showed on the sheets that look back: read apart, since most jobs have nothing there. */
function builtSaid(
  model: Model,
  bytes: Uint8Array,
  reading: Pick<WorkbookReading, "kept">,
): BuiltFigures {
  let wanted: ReadonlySet<string> | undefined;
  const content = readWorkbook(bytes, {
    ...{ formulas: false, ...reading },
    sheets: ({ name }, common) => {
      wanted ??= placesOf(model, common).sheetsOf(builtCells(model));
      return wanted.has(name);
    },
  });
  const contentOf = finder(model, content, bytes);
  return builtFigures(model, (cell) => asValue(contentOf(cell)?.value ?? null));
}

/** Is it a workbook of learned rates, which is no job? */
export function isLearnedWorkbook(bytes: Uint8Array, templates: readonly Template[]): boolean {
  const { properties } = readWorkbook(bytes, { formulas: false, sheets: () => false });
  const { template } = identityAt(bytes, properties);
  return templates.some(({ name, learns }) => name === template && learns !== undefined);
}

const asValue = (value: CellValue): Value =>
  typeof value === "object" && value !== null ? new CellError(value.error as ErrorCode) : value;

/** The inputs of a workbook as a job record would give them: without those that are the book's. */
function recordOf(
  model: Model,
  values: readonly Value[],
  byBook: ReadonlySet<number>,
  identity: WorkbookIdentity,
): JobRecord {
  const { name, version } = model.template;
  const tables: Record<string, Record<string, InputValue | null>[]> = {};
  const inputs: Record<string, InputValues[string]> = {};
  const changed = ownTables(model, byBook);
  /** Tables of which some values are the book's. */
  const shared = new Set<string>();
  for (const { cell, date, table, key = "" } of inputPlanOf(model).inputs) {
    const value = values[cell.index] as InputValue | null;
    const written = date && typeof value === "number" ? writtenDate(value) : value;
    if (table === undefined) {
      if (!byBook.has(cell.index)) inputs[cell.name] = written;
      continue;
    }
    if (byBook.has(cell.index) && !changed.has(table)) {
      shared.add(table);
      continue;
    }
    const rows = tables[table] ?? [];
    tables[table] = rows;
    const at = (cell.row ?? 1) - 1;
    rows[at] = { ...rows[at], [key]: written };
  }
  for (const [table, rows] of Object.entries(tables)) {
    if (shared.has(table)) {
      inputs[table] = Array.from(rows, (row) => row ?? {});
      continue;
    }
    const isFilled = (row: RowValues) => Object.values(row).some((value) => value !== null);
    const last = rows.findLastIndex(isFilled);
    // a blank row among others is null: as an empty one it would take defaults
    inputs[table] = rows.slice(0, last + 1).map((row) => (isFilled(row) ? row : null));
  }
  return {
    rillbook: 1,
    job: identity.job ?? "",
    template: name,
    version,
    units: model.system,
    inputs,
  };
}

/** Tables of the office's own rows of which a job changed something: it gives all of their rows then. */
function ownTables(model: Model, byBook: ReadonlySet<number>): ReadonlySet<string> {
  const changed = inputPlanOf(model).inputs.filter(
    ({ cell, ownRows }) => ownRows && !byBook.has(cell.index),
  );
  return new Set(changed.flatMap(({ table }) => table ?? []));
}
