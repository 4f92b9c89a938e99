import { limits } from "../limits.js";
import { besideLines } from "./book-copies.js";
import { chartFaults } from "./chart-faults.js";
import type {
  Block,
  CellDeclaration,
  InputDeclaration,
  InputValue,
  SheetDeclaration,
  TableBlock,
} from "./declare.js";
import { messageName, repeatKey, statusName, toDo } from "./implied-names.js";
import { impliedKeysOf, workingsSheet } from "./spread.js";
import type { Template } from "./template.js";

/** Sheets that every workbook has. */
const ownSheets: ReadonlySet<string> = new Set([
  "summary",
  "workings",
  "checks",
  "trail",
  "names",
  "as written",
]);

function declaredCells(block: Block): CellDeclaration[] {
  if (block.kind === "table") return Object.values(block.columns);
  return "cells" in block ? Object.values(block.cells) : [];
}

const isTable = (block: Block): block is TableBlock => block.kind === "table";

/** What does not hold together in the declarations, before any formula is looked at. */
export function structureFaults(template: Template): string[] {
  const blocks = template.sheets.flatMap((sheet) => sheet.blocks);
  const tables = new Map(blocks.filter(isTable).map((table) => [table.name, table]));
  const cells = blocks.flatMap(declaredCells);
  const singles = new Set(blocks.flatMap((one) => ("cells" in one ? Object.keys(one.cells) : [])));
  const idle = !cells.some(({ kind }) => kind === "input" || kind === "check");
  return [
    ...(idle ? ["It has neither inputs nor checks, so there is nothing to estimate."] : []),
    ...sheetFaults(template.sheets),
    ...[...tables.values()].flatMap((table) => tableFaults(table, tables, singles)),
    ...blocks.flatMap(cellFaults),
    ...(template.office === undefined ? [] : codeFaults(blocks)),
    ...nameListFaults(template, blocks, tables),
    ...chartFaults(blocks, tables),
  ];
}

function sheetFaults(sheets: readonly SheetDeclaration[]): string[] {
  const names = sheets.map(({ name }) => name.toLowerCase());
  return sheets.flatMap(({ name, blocks, afterwards }, i) => {
    const faults: string[] = [];
    if (ownSheets.has(name.toLowerCase())) {
      faults.push(`Sheet "${name}": every workbook has a sheet of that name. Rename it.`);
    }
    if (names.indexOf(name.toLowerCase()) < i) {
      faults.push(`Sheet "${name}": two sheets have this name. Rename one.`);
    }
    if (blocks.length === 0) faults.push(`Sheet "${name}": it is empty. Take it out.`);
    const stops = blocks
      .flatMap(declaredCells)
      .some((one) => one.kind === "check" && one.level === "must");
    if (afterwards && stops) {
      faults.push(
        `Sheet "${name}": it is filled in after the work, so that no check of it may stop the bid. Give its checks the level "look".`,
      );
    }
    return faults;
  });
}

function tableFaults(
  table: TableBlock,
  tables: ReadonlyMap<string, TableBlock>,
  singles: ReadonlySet<string>,
): string[] {
  const faults: string[] = [];
  const fault = (what: string) => faults.push(`Table "${table.name}": ${what}.`);
  const keys = Object.keys(table.columns);
  const cells = Object.values(table.columns);
  if (!Number.isInteger(table.rows) || table.rows < 1 || table.rows > limits.rows) {
    fault(`it has ${table.rows} rows, but must have a whole number from 1 to ${limits.rows}`);
  }
  if (keys.length === 0) fault("it has no columns");
  if (table.from !== undefined && table.rows === 1) {
    fault("it has one row, and Gnumeric finds nothing in a column of a single cell. Give it two");
  }
  if ((table.opening ?? 0) > table.rows) {
    fault(`it opens with ${table.opening} rows, but has ${table.rows}`);
  }
  const data = table.data ?? [];
  if (data.length > table.rows) fault(`it has ${table.rows} rows, but ${data.length} rows of data`);
  for (const key of new Set(data.flatMap((row) => Object.keys(row)))) {
    const kind = Object.hasOwn(table.columns, key) ? table.columns[key]?.kind : undefined;
    if (kind !== "published" && kind !== "input") {
      fault(`its data has "${key}", which is no input or published column of it`);
    }
  }
  if (table.beside !== undefined) {
    const other = tables.get(table.beside);
    if (other === undefined) fault(`it stands beside "${table.beside}", which is no table`);
    else if (other.rows !== table.rows) {
      fault(`it has ${table.rows} rows, but ${other.name}, which it stands beside, ${other.rows}`);
    }
  }
  const booked = cells.some(({ kind }) => kind === "book");
  if (booked && table.from === undefined) {
    fault("it has office-book columns, but no `from` to tell which table of the book fills them");
  }
  for (const name of table.usedBy ?? []) {
    if (!singles.has(name) && !hasColumn(name, tables)) {
      fault(`usedBy names "${name}", which is no column and no cell`);
    }
  }
  const made = [...impliedKeysOf(table), toDo, repeatKey(keys[0] ?? "", workingsSheet)];
  for (const key of new Set(made.filter((one) => Object.hasOwn(table.columns, one)))) {
    fault(`the column "${key}" is made by the compiler. Rename yours`);
  }
  return faults;
}

/** Inputs that hold codes of a table which no office book fills. */
function codeFaults(blocks: readonly Block[]): string[] {
  const filled = new Set(blocks.filter(isTable).map(({ from }) => from));
  return blocks.flatMap(declaredCells).flatMap((cell) => {
    if (cell.kind !== "input" || cell.codeOf === undefined || filled.has(cell.codeOf)) return [];
    return [
      `The input "${cell.label}" holds codes of "${cell.codeOf}", but no table is filled from it. Declare one, or correct the name.`,
    ];
  });
}

function hasColumn(name: string, tables: ReadonlyMap<string, TableBlock>): boolean {
  const [table = "", key = ""] = name.split(".");
  const columns = tables.get(table)?.columns;
  return columns !== undefined && Object.hasOwn(columns, key);
}

function cellFaults(block: Block): string[] {
  if (block.kind === "lines" || block.kind === "prose" || block.kind === "panel") {
    return Object.entries(block.cells).flatMap(([name, cell]) => [
      ...(cell.kind === "published" && cell.value === undefined
        ? [`"${name}" is a published figure without a value. Give it one.`]
        : []),
      ...(cell.kind === "book" ? [`"${name}": office-book figures stand in tables only.`] : []),
      ...(cell.kind === "published" ? valueFaults(name, cell, cell.value) : []),
      ...inputFaults(name, cell),
    ]);
  }
  if (block.kind !== "table") return [];
  return Object.entries(block.columns).flatMap(([key, cell]) => [
    ...inputFaults(`${block.name}.${key}`, cell),
    ...(block.data ?? []).flatMap((row) => valueFaults(`${block.name}.${key}`, cell, row[key])),
  ]);
}

function inputFaults(name: string, cell: CellDeclaration): string[] {
  if (cell.kind !== "input") return [];
  const faults = valueFaults(name, cell, cell.default);
  const { least, most, choices } = cell;
  if (least !== undefined && most !== undefined && least > most) {
    faults.push(`The input "${name}" must be at least ${least} and at most ${most}: no value can.`);
  }
  if (choices !== undefined && cell.quantity.kind !== "text") {
    faults.push(`The input "${name}" has choices, so its quantity must be text.`);
  }
  if (typeof choices === "string" || choices === undefined) return faults;
  if (choices.length === 0) faults.push(`The input "${name}" has no choices to choose from.`);
  for (const one of choices.filter((choice) => /[",]/.test(choice) || choice.trim() !== choice)) {
    faults.push(
      `The input "${name}" has the choice "${one}": a list in a spreadsheet has no commas, quotes or spaces at the ends.`,
    );
  }
  // the list stands in the file as one text with its quotes
  if (choices.join(",").length + 2 > limits.choices) {
    faults.push(
      `The choices of "${name}" have more than ${limits.choices - 2} characters together. Put them in a table and name its column.`,
    );
  }
  return faults;
}

const kinds = { number: "number", text: "string", yesno: "boolean", date: "string" } as const;

/** A default or a row of data that its own rule would refuse. */
function valueFaults(name: string, cell: CellDeclaration, value: InputValue | undefined): string[] {
  if (value === undefined) return [];
  const shown = JSON.stringify(value);
  if (typeof value !== kinds[cell.quantity.kind]) {
    return [`"${name}" is given ${shown}, but holds a ${cell.quantity.name}.`];
  }
  if (cell.kind === "published" && cell.quantity.kind === "date") {
    return [`"${name}" is a published date, which cannot be calculated with. Give it as text.`];
  }
  if (cell.kind !== "input") return [];
  return breaksRule(cell, value) ? [`"${name}" is given ${shown}, which breaks its own rule.`] : [];
}

function breaksRule({ least, most, whole, choices }: InputDeclaration, value: InputValue): boolean {
  if (Array.isArray(choices)) return !choices.includes(value as string);
  if (typeof value !== "number") return false;
  if (!Number.isFinite(value) || (whole && !Number.isInteger(value))) return true;
  return value < (least ?? value) || value > (most ?? value);
}

/** Names in the template's own lists that stand for nothing. */
function nameListFaults(
  template: Template,
  blocks: readonly Block[],
  tables: ReadonlyMap<string, TableBlock>,
): string[] {
  const singles = new Set(
    blocks.flatMap((block) => ("cells" in block ? Object.keys(block.cells) : [])),
  );
  const faults: string[] = [];
  const mustBeCell = (name: string | undefined, where: string) => {
    if (name !== undefined && !singles.has(name)) {
      faults.push(`${where} names "${name}", which is no single cell of this template.`);
    }
  };
  const mustBeColumn = (name: string | undefined, where: string) => {
    if (name !== undefined && !hasColumn(name, tables)) {
      faults.push(`${where} names "${name}", which is no column of this template.`);
    }
  };
  for (const name of template.headline) mustBeCell(name, "The headline");
  const { roles } = template;
  mustBeCell(roles?.price, "The role price");
  mustBeCell(roles?.cost, "The role cost");
  mustBeCell(roles?.contingency, "The role contingency");
  const { pace = [], ...single } = roles?.overrun ?? {};
  for (const [part, name] of Object.entries(single)) mustBeCell(name, `The role overrun, ${part},`);
  for (const name of pace) {
    const where = "The role overrun, pace,";
    if (name.includes(".")) mustBeColumn(name, where);
    else mustBeCell(name, where);
  }
  mustBeCell(roles?.title, "The role title");
  mustBeCell(roles?.customer, "The role customer");
  for (const { label, name } of roles?.sections ?? []) mustBeCell(name, `The section "${label}"`);
  mustBeColumn(roles?.goodUntil, "The role goodUntil");
  return faults;
}

/** The names of the message cells that the compiler puts beside a block's cells. */
export function impliedNames(block: Block): string[] {
  if (block.kind !== "lines") return [];
  const beside = [...besideLines(block).values()].flatMap((cells) => Object.keys(cells));
  const messages = Object.entries(block.cells).flatMap(([name, { kind }]) =>
    kind === "check" ? [messageName(name)] : kind === "input" ? [statusName(name)] : [],
  );
  return [...messages, ...beside];
}
