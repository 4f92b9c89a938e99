import { RillbookError } from "../errors.js";
import { suggestion } from "../formula/suggest.js";
import { CellError, type Value } from "../formula/value.js";
import { serialOf } from "../job/date.js";
import type { Model } from "../template/model.js";
import type { Template } from "../template/template.js";

type Operator = "=" | "!=" | "<" | "<=" | ">" | ">=" | "~";

/** `price>=20000`: a property of the job or a cell by name, an operator, a value. */
export interface Filter {
  readonly name: string;
  readonly operator: Operator;
  readonly wanted: string;
}

/** What a filter can name besides the template's cells. */
export type Properties = Readonly<Record<(typeof propertyNames)[number], Value>>;

/** Throws RillbookError for a filter that cannot be read. */
export function filterOf(written: string): Filter {
  const match = /^\s*([a-z_][a-z_0-9]*)\s*(!=|<=|>=|=|<|>|~)\s*(.*?)\s*$/.exec(written);
  if (match === null) {
    throw new RillbookError(
      "filter-invalid",
      `--filter is ${JSON.stringify(written)}, but must be a name, an operator (= != < <= > >= ~) and a value, such as "price>=20000", "bid_date<2026-01-01" or "job~garden".`,
    );
  }
  const [, name = "", operator, wanted = ""] = match;
  return { name, operator: operator as Operator, wanted };
}

/**
 * Does a job pass all filters? `~` looks for a text within, without regard to case.
 */
export function passes(
  filters: readonly Filter[],
  model: Model,
  values: readonly Value[],
  properties: Properties,
): boolean {
  return filters.every((filter) => {
    const { name, operator, wanted } = filter;
    const value = Object.hasOwn(properties, name)
      ? properties[name as keyof Properties]
      : values[model.byId.get(name)?.index ?? -1];
    return value !== undefined && holds(value, operator, wanted);
  });
}

const ownCells = ["bid_stands", "errors_found", "checks_failed", "warnings"] as const;
const propertyNames = ["job", "file", "template", "units", "version"] as const;

/** Throws RillbookError for a filter whose name no template has; a job of another template does not pass. */
export function mustKnowFilters(filters: readonly Filter[], templates: readonly Template[]): void {
  const cells = templates.flatMap(({ sheets }) =>
    sheets.flatMap(({ blocks }) =>
      blocks.flatMap((block) => ("cells" in block ? Object.keys(block.cells) : [])),
    ),
  );
  const known = [...propertyNames, ...cells, ...ownCells];
  for (const { name } of filters) {
    if (known.includes(name)) continue;
    throw new RillbookError(
      "filter-unknown",
      `--filter names "${name}", which no template has.${suggestion(name, known)} Use job, file, template, version, units or the name of a single cell ("rillbook names").`,
    );
  }
}

function holds(value: Value, operator: Operator, wanted: string): boolean {
  if (value === null || value instanceof CellError) return operator === "!=";
  if (operator === "~") return String(value).toLowerCase().includes(wanted.toLowerCase());
  const order = ordered(value, wanted);
  switch (operator) {
    case "=":
      return order === 0;
    case "!=":
      return order !== 0;
    case "<":
      return order < 0;
    case "<=":
      return order <= 0;
    case ">":
      return order > 0;
    default:
      return order >= 0;
  }
}

/** Numbers and dates by size (NaN, which nothing equals, for what is no number), texts by the alphabet. */
function ordered(value: Exclude<Value, CellError | null>, wanted: string): number {
  if (typeof value === "number") return value - (serialOf(wanted) ?? Number(wanted || "x"));
  const text = typeof value === "boolean" ? (value ? "yes" : "no") : value.toLowerCase();
  const other = wanted.toLowerCase();
  return text < other ? -1 : text > other ? 1 : 0;
}
