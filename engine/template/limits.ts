import { partsOf, type Tree, walk } from "../formula/tree.js";
import { type Cell, columnOf, type Model } from "./model.js";
import { xlsxFormula } from "./printed.js";

/** Spreadsheets end a formula at 8,192 characters. */
export const longestFormula = 8000;

/** Spreadsheets take functions within functions 64 levels deep. */
export const deepestCalls = 64;

/** Functions that read several columns row by row. */
const rowByRow: ReadonlySet<string> = new Set("SUMPRODUCT COUNTIFS MAXIFS MINIFS".split(" "));

/** Formulas that a spreadsheet would refuse, once their named formulas are opened. */
export function limitFaults(model: Model): string[] {
  const faults = model.order.flatMap((cell) => {
    const tree = cell.native as Tree;
    return [
      ...lengthFaults(model, cell),
      ...nestingFaults(cell, tree),
      ...rowFaults(model, cell, tree),
      ...blankFaults(model, cell, tree),
    ];
  });
  return [...new Set(faults)];
}

function lengthFaults(model: Model, cell: Cell): string[] {
  const length = xlsxFormula(model, cell).length;
  if (length <= longestFormula) return [];
  return [
    `The formula of ${cell.id} has ${length} characters; ${longestFormula} is the most. Split it over further cells.`,
  ];
}

function nestingFaults(cell: Cell, tree: Tree): string[] {
  const depth = callDepth(tree);
  if (depth <= deepestCalls) return [];
  return [
    `The formula of ${cell.id} has functions ${depth} deep in one another; ${deepestCalls} is the most. Split it over further cells.`,
  ];
}

function callDepth(tree: Tree): number {
  const within = partsOf(tree).reduce((deepest, part) => Math.max(deepest, callDepth(part)), 0);
  return within + (tree.kind === "call" ? 1 : 0);
}

/** Columns of tables of unequal length beside one another in a function. */
function rowFaults(model: Model, cell: Cell, tree: Tree): string[] {
  return [...walk(tree)].flatMap((node) => {
    const columns = besideOneAnother(node);
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
function blankFaults(model: Model, cell: Cell, tree: Tree): string[] {
  return [...walk(tree)].flatMap((node) => {
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
