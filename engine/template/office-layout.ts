import { type UnitSystem, unitOf } from "../units/quantity.js";
import {
  type BookColumn,
  type BookLayout,
  type BookRow,
  type BookTable,
  type LayoutOf,
  placeholderColumn,
} from "./book-layout.js";
import { sheetsIn, wordsIn } from "./by-system.js";
import { inUnit } from "./compile.js";
import {
  type Block,
  type InputDeclaration,
  type InputValue,
  isOffice,
  type LinesBlock,
  type TableBlock,
} from "./declare.js";
import { inSystem, ruleInWords } from "./implied.js";
import { hasOwnRows } from "./own-rows.js";
import { sharedLayout } from "./shared-layout.js";
import type { Template } from "./template.js";

/** The sheets of rules: texts for paper on the one, all else on the other. */
export const rulesTables = { company: "company", rules: "rules" } as const;

/** The column of a derived table that names its rows, where the template does. */
export const rowColumn = "row";

const longestText = 2000;

/**
 * The layout of a template's office book, in one system of units: what the template declares (items
 * and rates), and a place for every input that is asked of the office. Nobody keeps a list of these.
 */
export function officeLayout(
  template: Pick<Template, "sheets" | "office">,
  system: UnitSystem,
): BookLayout {
  // most blocks ask nothing of the office: they need not be put into the words of the system
  const asking = template.sheets.map((sheet) => ({
    ...sheet,
    blocks: sheet.blocks.filter(asksOffice),
  }));
  const blocks = sheetsIn(asking, system).flatMap((sheet) => sheet.blocks);
  return [
    ...rulesOf(blocks, system),
    ...(template.office ?? []).map((table) => inWords(table, system)),
    ...blocks.flatMap((block) => (block.kind === "table" ? rowsOf(block, system) : [])),
  ];
}

function asksOffice(block: Block): boolean {
  if (block.kind !== "lines" && block.kind !== "table") return false;
  return Object.values(block.kind === "lines" ? block.cells : block.columns).some(isOffice);
}

interface Rule {
  readonly name: string;
  readonly section: string;
  readonly declaration: InputDeclaration;
}

/** Company and contract text: blocks whose office inputs are all texts of one's own. */
function rulesOf(blocks: readonly Block[], system: UnitSystem): BookTable[] {
  const own: Record<keyof typeof rulesTables, Rule[]> = { company: [], rules: [] };
  for (const block of blocks) {
    if (block.kind !== "lines") continue;
    const rules = officeCells(block);
    const texts = rules.every(
      ({ declaration: { quantity, choices } }) => quantity.kind === "text" && choices === undefined,
    );
    own[texts ? "company" : "rules"].push(...rules);
  }
  return [
    rulesTable(
      "company",
      "Company",
      "Company and contract text, as pages print it.",
      own.company,
      system,
    ),
    rulesTable(
      "rules",
      "Rules",
      "What holds for every job until a job says otherwise.",
      own.rules,
      system,
    ),
  ].filter(({ rules }) => rules.size > 0);
}

const officeCells = (block: LinesBlock): Rule[] =>
  Object.entries(block.cells).flatMap(([name, declaration]) =>
    isOffice(declaration) ? [{ name, section: block.heading, declaration }] : [],
  );

function rulesTable(
  name: string,
  sheet: string,
  means: string,
  rules: readonly Rule[],
  system: UnitSystem,
): BookTable & Required<Pick<BookTable, "rules">> {
  const guide = (key: string, means: string): BookColumn => ({
    key,
    kind: "text",
    means,
    longest: longestText,
    guide: true,
  });
  return {
    name,
    sheet,
    means,
    key: ["rule"],
    optional: true,
    columns: [
      guide("meaning", "What it is."),
      {
        key: "value",
        kind: "text",
        means: "The office's own value, in the unit beside it.",
        longest: longestText,
      },
      guide("unit", "Unit of the value."),
      guide("range", "What the value may be."),
      placeholderColumn,
      guide("note", "How it is meant, and where the template's own value comes from."),
      {
        key: "rule",
        kind: "code",
        required: true,
        means: "The name that formulas read: leave it as it is.",
      },
    ],
    groups: new Map(rules.map(({ name, section }) => [name, section])),
    rules: new Map(rules.map((rule) => [rule.name, columnFor("value", rule.declaration, system)])),
    starter: rules.map((rule) => starterRule(rule, system)),
  };
}

function starterRule({ name, declaration }: Rule, system: UnitSystem): BookRow {
  const { quantity, label, note, source, optional } = declaration;
  const usual = declaration.default;
  const value = usual === undefined ? standIn(declaration) : inUnit(usual, quantity, system);
  const unit = quantity.percent
    ? "%"
    : quantity.kind === "date"
      ? ""
      : unitOf(quantity, system).name;
  const told = {
    meaning: label,
    unit,
    range: rangeOf(declaration, system),
    note: [note, source === undefined ? undefined : `Source: ${source}.`].filter(Boolean).join(" "),
  };
  const kept = Object.entries(told).filter(([, text]) => text !== "");
  return {
    ...Object.fromEntries(kept),
    rule: name,
    ...(value === undefined ? {} : { value }),
    ...(usual === undefined && !optional ? { placeholder: true } : {}),
  };
}

/** What stands for a value that the template has no default for, until the office gives its own. */
function standIn({ quantity, label, optional }: InputDeclaration): InputValue | undefined {
  return optional || quantity.kind !== "text" ? undefined : `PLACEHOLDER: ${label}`;
}

function rangeOf(declaration: InputDeclaration, system: UnitSystem): string {
  const { quantity, choices } = declaration;
  if (Array.isArray(choices)) return choices.join(", ");
  if (quantity.kind === "yesno") return "yes or no";
  return quantity.kind === "text" ? "" : ruleInWords(declaration, system);
}

/** A table of the book for the rows of a template's table that the office fills. */
function rowsOf(block: TableBlock, system: UnitSystem): BookTable[] {
  const office = Object.entries(block.columns).filter(([, declaration]) => isOffice(declaration));
  if (office.length === 0) return [];
  const own = hasOwnRows(block);
  const names = own ? [] : rowNames(block);
  const columns = office.map(([key, declaration]) =>
    columnFor(key, declaration as InputDeclaration, system),
  );
  const named: BookColumn[] = own
    ? []
    : [
        {
          key: rowColumn,
          kind: "text",
          required: true,
          choices: names,
          means: "The row of the bid: leave it as it is.",
        },
      ];
  const rows = block.data ?? [];
  return [
    {
      name: block.name,
      sheet: sheetName(block.heading),
      means: [`${block.heading}.`, block.note].filter(Boolean).join(" "),
      key: own ? [] : [rowColumn],
      optional: true,
      ...(own ? {} : { fixed: true }),
      columns: [...named, ...columns, placeholderColumn],
      starter: (own ? rows : names).map((_, i) => ({
        ...(own ? {} : { [rowColumn]: names[i] as string }),
        ...starterCells(office, rows[i] ?? {}, system),
      })),
    },
  ];
}

function starterCells(
  office: readonly (readonly [string, Block | unknown])[],
  row: Readonly<Record<string, InputValue>>,
  system: UnitSystem,
): BookRow {
  const cells = office.flatMap(([key, cell]): [string, InputValue][] => {
    const { quantity, default: usual } = cell as InputDeclaration;
    const value = row[key] ?? usual;
    return value === undefined ? [] : [[key, inUnit(value, quantity, system)]];
  });
  return Object.fromEntries(cells);
}

/** How people call the rows that a template fixes: by its own list, else by the first published text. */
export function rowNames({ rowNames, columns, data = [], rows }: TableBlock): readonly string[] {
  if (rowNames !== undefined) return rowNames;
  const [key] =
    Object.entries(columns).find(
      ([, { kind, quantity }]) => kind === "published" && quantity.kind === "text",
    ) ?? [];
  return Array.from({ length: rows }, (_, i) => String((key && data[i]?.[key]) ?? i + 1));
}

/** What a column that holds an input's values may hold. */
function columnFor(key: string, declaration: InputDeclaration, system: UnitSystem): BookColumn {
  const {
    quantity,
    label,
    note,
    least,
    most,
    whole,
    optional,
    choices,
    default: usual,
  } = declaration;
  const unit = quantity.kind === "number" ? unitOf(quantity, system).name : "";
  const here = (limit: number | undefined) =>
    limit === undefined ? undefined : inSystem(limit, declaration, system);
  const [low, high] = [here(least), here(most)];
  return {
    key,
    kind: quantity.kind,
    means: [unit === "" ? `${label}.` : `${label}, ${unit}.`, note].filter(Boolean).join(" "),
    ...(optional || usual !== undefined ? {} : { required: true }),
    ...(low === undefined ? {} : { least: low }),
    ...(high === undefined ? {} : { most: high }),
    ...(whole ? { whole } : {}),
    ...(quantity.percent ? { percent: true } : {}),
    ...(Array.isArray(choices) ? { choices } : {}),
    longest: longestText,
  };
}

/** A name that every spreadsheet program takes for a sheet: 31 characters, none of them special. */
const sheetName = (heading: string): string =>
  heading
    .replace(/[\\/?*[\]:,]/g, "")
    .slice(0, 31)
    .trim();

/** A table that the template declares, in the words and the figures of a system. */
function inWords(table: BookTable, system: UnitSystem): BookTable {
  const columns = table.columns.map((column) => ({
    ...column,
    means: wordsIn(column.means, system),
  }));
  const numbers = new Set(columns.flatMap(({ key, kind }) => (kind === "number" ? [key] : [])));
  const cell = (key: string, value: InputValue): InputValue => {
    const said = typeof value === "string" ? wordsIn(value, system) : value;
    return numbers.has(key) ? Number(said) : said;
  };
  const starter = table.starter?.map((row) =>
    Object.fromEntries(Object.entries(row).map(([key, value]) => [key, cell(key, value)])),
  );
  return { ...table, means: wordsIn(table.means, system), columns, ...(starter && { starter }) };
}

const layouts = new WeakMap<Template, Partial<Record<UnitSystem, BookLayout>>>();

/** The layouts of a template's office book, each made at the first call. */
export function layoutOf(template: Template): LayoutOf {
  const known = layouts.get(template) ?? {};
  layouts.set(template, known);
  return (system) => {
    known[system] ??= sharedLayout(
      officeLayout(template, system),
      (template.sharesBook?.() ?? [])
        .filter((other) => other.name !== template.name)
        .map((other) => officeLayout(other, system)),
    );
    return known[system];
  };
}
