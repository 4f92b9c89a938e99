import type { Block, CellDeclaration, InputDeclaration, TableBlock } from "./declare.js";
import { messageName, repeatKey, statusKey, toDo } from "./implied-names.js";

/**
 * A table whose columns stand on several sheets: its home, where it is declared, and those that
 * ask for some of its inputs. On each of them the first column heads the rows; where it stands
 * elsewhere, a cell that the compiler adds shows it again.
 */

/** The sheet of steps on the way: what a page has no room for, row by row beside the same thing. */
export const workingsSheet = "Workings";

/** A sheet on which columns of a table stand; undefined for its home. */
export type Where = string | undefined;

/** Where a column stands. */
export const whereOf = (table: TableBlock, key: string): Where =>
  table.elsewhere !== undefined && Object.hasOwn(table.elsewhere, key)
    ? table.elsewhere[key]
    : undefined;

/** The sheets on which columns of a table stand, its home first. */
export const placesOf = (table: TableBlock): Where[] => [
  undefined,
  ...new Set(Object.values(table.elsewhere ?? {})),
];

/** The table that a block shows, in whole or in part. */
export const tableShown = (block: Block): TableBlock | undefined =>
  block.kind === "table" ? block : block.kind === "part" ? block.of : undefined;

/** Columns that stand on one sheet and are shown again on this one. */
export function repeatsOn(table: TableBlock, where: Where): string[] {
  const declared = Object.entries(table.columns);
  return declared.flatMap(([key, declaration], i) => {
    const isHere = whereOf(table, key) === where;
    const again = where === undefined && "again" in declaration && declaration.again === true;
    return !isHere && (i === 0 || again) ? [key] : [];
  });
}

/** The inputs of a table that stand on a sheet. */
export function inputsOn(table: TableBlock, where: Where): [string, InputDeclaration][] {
  return Object.entries(table.columns).flatMap(([key, cell]): [string, InputDeclaration][] =>
    cell.kind === "input" && whereOf(table, key) === where ? [[key, cell]] : [],
  );
}

/** What a row has to say at its table's home, of its checks and of the inputs that stand there. */
export function messagesAtHome(table: TableBlock): string[] {
  const isCheck = ([, { kind }]: [string, CellDeclaration]) => kind === "check" && !table.unseen;
  const checks = Object.entries(table.columns).filter(isCheck);
  return [
    ...checks.map(([key]) => messageName(key)),
    ...(inputsOn(table, undefined).length > 0 ? [statusKey(undefined)] : []),
  ];
}

/**
 * The messages of the rows on a sheet: one for the eye. Where there are several at home, the first of
 * them that is not empty shows there, and that of the inputs by itself stands among the workings.
 */
export function messageKeysOn(table: TableBlock, where: Where): string[] {
  const atHome = messagesAtHome(table);
  if (where === undefined) return atHome.length < 2 ? atHome : [toDo];
  if (where === workingsSheet) {
    return atHome.length < 2 ? [] : atHome.filter((key) => key === statusKey(undefined));
  }
  return inputsOn(table, where).length > 0 ? [statusKey(where)] : [];
}

/** The columns that the compiler adds to a table: messages, and what is shown again. */
export function impliedKeysOf(table: TableBlock): string[] {
  return placesOf(table).flatMap((where) => [
    ...repeatsOn(table, where).map((key) => repeatKey(key, where)),
    ...messageKeysOn(table, where),
  ]);
}

/** The columns that a sheet shows side by side, in the order of their declaration; messages follow apart. */
export function columnsOn(table: TableBlock, where: Where): string[] {
  const repeats = new Set(repeatsOn(table, where));
  const implied = new Set(impliedKeysOf(table));
  return Object.keys(table.columns).flatMap((key) => {
    if (repeats.has(key)) return [repeatKey(key, where)];
    return whereOf(table, key) === where && !implied.has(key) ? [key] : [];
  });
}
