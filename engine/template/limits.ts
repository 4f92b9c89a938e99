import { partsOf, type Tree, walk } from "../formula/tree.js";
import { cellTextTrouble, limits } from "../limits.js";
import type { PanelBlock } from "./declare.js";
import { type Cell, columnOf, type Model } from "./model.js";
import { xlsxFormula } from "./printed.js";

/** Short of the format's limit: rows that a user inserts make addresses longer. */
export const longestFormula = 8000;

/** Functions that read several columns row by row. */
const rowByRow: ReadonlySet<string> = new Set("SUMPRODUCT COUNTIFS MAXIFS MINIFS".split(" "));

/** Formulas that a spreadsheet would refuse, once their named formulas are opened. */
export function limitFaults(model: Model): string[] {
  const depths = new Map<Tree, number>();
  const mostLengths = new Map<Tree, number>();
  const looked = new Map<Tree, string>();
  const faults: string[] = [];
  for (const cell of model.order) {
    const tree = cell.native as Tree;
    const most = known(mostLengths, tree, () => mostLength(model, cell, tree));
    if (most > longestFormula) faults.push(...lengthFaults(model, cell));
    const depth = known(depths, tree, () => callDepth(tree));
    if (depth > limits.nesting) faults.push(nestingFault(cell, depth));
    // the rest names the column: the rows that share its tree would say it again
    if (looked.get(tree) === cell.name) continue;
    looked.set(tree, cell.name);
    const nodes = walk(tree);
    faults.push(
      ...literalFaults(cell, nodes),
      ...rowFaults(model, cell, nodes),
      ...blankFaults(model, cell, nodes),
    );
  }
  return [
    ...new Set([...faults, ...placeFaults(model), ...textFaults(model), ...titleFaults(model)]),
  ];
}

function known<T>(found: Map<Tree, T>, tree: Tree, find: () => T): T {
  const before = found.get(tree);
  if (before !== undefined) return before;
  const value = find();
  found.set(tree, value);
  return value;
}

/** The most that an address can grow by from one row or sheet to another: `'Sheet name'!` and digits. */
const mostGrowth = limits.sheetName + "''!".length + String(limits.rows).length;

/** A length that the formula of no cell with this tree goes beyond, given one such cell. */
function mostLength(model: Model, cell: Cell, tree: Tree): number {
  const references = walk(tree).filter(
    ({ kind }) => kind === "own" || kind === "scalar" || kind === "column",
  );
  return xlsxFormula(model, cell).length + references.length * mostGrowth;
}

function lengthFaults(model: Model, cell: Cell): string[] {
  const length = xlsxFormula(model, cell).length;
  if (length <= longestFormula) return [];
  return [
    `The formula of ${cell.id} has ${length} characters; ${longestFormula} is the most. Split it over further cells.`,
  ];
}

const nestingFault = ({ id }: Cell, depth: number): string =>
  `The formula of ${id} has functions ${depth} deep in one another; ${limits.nesting} is the most. Split it over further cells.`;

function callDepth(tree: Tree): number {
  const within = partsOf(tree).reduce((deepest, part) => Math.max(deepest, callDepth(part)), 0);
  return within + (tree.kind === "call" ? 1 : 0);
}

/** Texts within a formula, which sentences part by themselves. */
function literalFaults(cell: Cell, nodes: readonly Tree[]): string[] {
  return nodes.flatMap((node) =>
    node.kind === "text" && node.value.length > limits.literal
      ? [
          `The formula of ${cell.name} has a text of ${node.value.length} characters; ${limits.literal} is the most. Join it from parts with &, or write a sentence with ~.`,
        ]
      : [],
  );
}

/** Cells that stand beyond the last row or column of a worksheet. */
function placeFaults({ cells }: Model): string[] {
  const beyond = cells.filter(({ line, column }) => line > limits.rows || column > limits.columns);
  return [...new Set(beyond.map(({ sheet }) => sheet))].map(
    (sheet) =>
      `Sheet "${sheet}" has more than ${limits.rows} rows or ${limits.columns} columns. Part it in two sheets.`,
  );
}

/** The standing words of a panel. */
const wordsOf = ({ rows }: PanelBlock): string[] =>
  rows.flatMap(({ places }) => places.flatMap(({ says }) => says ?? []));

/** Standing texts that no cell or note can hold. */
function textFaults({ cells, sheets, placed }: Model): string[] {
  const fault = (what: string, text: string | undefined): string[] => {
    const trouble = text === undefined ? undefined : cellTextTrouble(text);
    return trouble === undefined ? [] : [`${what} ${trouble}. Shorten it.`];
  };
  return [
    ...sheets.flatMap(({ name, purpose }) => fault(`The purpose of sheet "${name}"`, purpose)),
    ...placed.flatMap(({ block, sheet }) => [
      ...fault(`A heading on sheet "${sheet}"`, block.heading),
      ...(block.kind === "text" ? block.paragraphs : []).flatMap((text) =>
        fault(`A paragraph on sheet "${sheet}"`, text),
      ),
      ...(block.kind === "panel" ? wordsOf(block) : []).flatMap((text) =>
        fault(`Words on sheet "${sheet}"`, text),
      ),
    ]),
    ...oneOfEach(cells).flatMap(({ name, declaration: { label, note, source } }) => [
      ...fault(`The label of "${name}"`, label),
      ...fault(`Note and source of "${name}" together`, [note, source].join(" Source: ")),
    ]),
  ];
}

/** Of each column one cell: its rows share name and declaration. */
const oneOfEach = (cells: readonly Cell[]): Cell[] => cells.filter(({ row = 1 }) => row === 1);

/** Defined names of columns are made of two. */
function titleFaults({ cells }: Model): string[] {
  return oneOfEach(cells).flatMap(({ name }) =>
    name.length > limits.name
      ? [
          `The name "${name.slice(0, 40)}…" has ${name.length} characters; ${limits.name} is the most. Shorten it.`,
        ]
      : [],
  );
}

/** Columns of tables of unequal length beside one another in a function. */
function rowFaults(model: Model, cell: Cell, nodes: readonly Tree[]): string[] {
  return nodes.flatMap((node) => {
    const columns = besideOneAnother(node);
    if (columns.length < 2) return [];
    const rows = new Set(
      columns.map(({ table, column }) => columnOf(model, table, column).cells.length),
    );
    if (rows.size < 2) return [];
    const names = columns.map(({ table, column }) => `${table}.${column}`).join(", ");
    return [
      `The formula of ${cell.name} takes columns of unequal length in ${(node as Call).name}: ${names}. Use columns of one table.`,
    ];
  });
}

/** Rows whose number is blank: the largest of none is an error in some programs and 0 in others. */
function blankFaults(model: Model, cell: Cell, nodes: readonly Tree[]): string[] {
  return nodes.flatMap((node) => {
    if (node.kind !== "call" || (node.name !== "MAXIFS" && node.name !== "MINIFS")) return [];
    const [column] = node.args;
    if (column?.kind !== "column") return [];
    const { table, column: key } = column;
    const { declaration } = columnOf(model, table, key);
    if (declaration.kind !== "input" && declaration.kind !== "book") return [];
    return [
      `The formula of ${cell.name} takes the largest or least of ${table}.${key}, whose cells may be blank, and programs differ on that. Add a calculated column that copies it.`,
    ];
  });
}

type Call = Extract<Tree, { kind: "call" }>;
type Column = Extract<Tree, { kind: "column" }>;

/** The columns that a function reads side by side; INDEX with the column that its MATCH looks through. */
function besideOneAnother(node: Tree): Column[] {
  if (node.kind !== "call") return [];
  if (rowByRow.has(node.name)) return node.args.flatMap(columnsIn);
  const at = node.name === "INDEX" ? node.args[1] : undefined;
  if (at?.kind !== "call" || at.name !== "MATCH") return [];
  return [node.args[0], at.args[1]].filter((one): one is Column => one?.kind === "column");
}

/** The columns that a function goes through, but not those within another function. */
function columnsIn(tree: Tree): Column[] {
  if (tree.kind === "column") return [tree];
  return tree.kind === "call" ? [] : partsOf(tree).flatMap(columnsIn);
}
