import type { UnitSystem } from "../units/quantity.js";
import { besideLines } from "./book-copies.js";
import type { Block, CellDeclaration, SheetDeclaration, TableBlock } from "./declare.js";
import { impliedColumns, impliedLines } from "./implied.js";
import { lineColumns, placeBlocks, placeOf } from "./layout.js";
import type { PlacedBlock } from "./model.js";
import { placeInPanel } from "./panel.js";
import type { Figure } from "./sentence.js";
import { impliedKeysOf } from "./spread.js";

/** A declared or implied cell with its place, before its formula is looked at. */
export interface Spot {
  readonly id: string;
  readonly name: string;
  readonly key: string;
  readonly table?: TableBlock;
  readonly row?: number;
  readonly declaration: CellDeclaration;
  readonly sheet: string;
  readonly column: number;
  readonly line: number;
  readonly implied: boolean;
}

/** The sheets with the implied columns put into their tables. */
export function withImpliedColumns(
  sheets: readonly SheetDeclaration[],
  system: UnitSystem,
): SheetDeclaration[] {
  return sheets.map((sheet) => ({
    ...sheet,
    blocks: sheet.blocks.map((block) => {
      if (block.kind === "part") return { ...block, of: withImplied(block.of, sheets, system) };
      return block.kind === "table" ? withImplied(block, sheets, system) : block;
    }),
  }));
}

function withImplied(
  table: TableBlock,
  sheets: readonly SheetDeclaration[],
  system: UnitSystem,
): TableBlock {
  const implied = impliedColumns(table, system, figuresFor(sheets, table));
  return { ...table, columns: { ...table.columns, ...implied } };
}

/** Places all blocks and lists all cells, sheet by sheet, columns one after another. */
export function spotsOf(
  sheets: readonly SheetDeclaration[],
  system: UnitSystem,
): { placed: PlacedBlock[]; spots: Spot[] } {
  const placed = sheets.flatMap(placeBlocks);
  const spots = placed.flatMap((one) => spotsOfBlock(one, sheets, system));
  return { placed, spots };
}

function spotsOfBlock(
  placed: PlacedBlock,
  sheets: readonly SheetDeclaration[],
  system: UnitSystem,
): Spot[] {
  const { block, sheet, top } = placed;
  if (block.kind === "text" || block.kind === "chart") return [];
  if (block.kind === "table") return tableSpots(block, placed);
  if (block.kind === "part") return tableSpots(block.of, placed);
  if (block.kind === "panel") {
    return Object.entries(block.cells).map(([name, declaration]) => {
      const { row, column } = placeInPanel(block, name);
      return {
        id: name,
        name,
        key: name,
        declaration,
        sheet,
        column,
        line: top + row,
        implied: false,
      };
    });
  }
  const implied =
    block.kind === "lines" ? impliedLines(block, system, figuresFor(sheets)) : new Map();
  const copies: ReturnType<typeof besideLines> =
    block.kind === "lines" ? besideLines(block) : new Map();
  const column = block.kind === "lines" ? lineColumns.value : 1;
  return Object.entries(block.cells).flatMap(([name, declaration], i) => {
    const line = top + 1 + i;
    const again = declaration.repeats !== undefined;
    const own = { id: name, name, key: name, declaration, sheet, column, line, implied: again };
    const aside = Object.entries(copies.get(name) ?? {}).map(([key, made]) => {
      const at = { column: lineColumns.copy, declaration: made };
      return { ...own, id: key, name: key, key, ...at };
    });
    const beside = implied.get(name);
    if (beside === undefined) return [own, ...aside];
    const names = { id: beside.name, name: beside.name, key: beside.name };
    const message = { ...names, declaration: beside.declaration, column: lineColumns.message };
    return [own, { ...message, sheet, line, implied: true }, ...aside];
  });
}

function tableSpots(block: TableBlock, placed: PlacedBlock): Spot[] {
  const impliedKeys = new Set(impliedKeysOf(block));
  const shown = new Set(placed.band?.columns);
  const columns = Object.entries(block.columns).filter(([key]) => shown.has(key));
  return columns.flatMap(([key, declaration]) =>
    Array.from({ length: block.rows }, (_, i) => ({
      id: `${block.name}.${key}[${i + 1}]`,
      name: `${block.name}.${key}`,
      key,
      table: block,
      row: i + 1,
      declaration,
      sheet: placed.sheet,
      ...placeOf(placed, key, i + 1),
      implied: impliedKeys.has(key),
    })),
  );
}

/** Looks up the figures that a sentence names: own columns first, then single cells. */
export function figuresFor(
  sheets: readonly SheetDeclaration[],
  table?: TableBlock,
): (name: string) => Figure | undefined {
  const tables = sheets.flatMap(({ blocks }) => blocks.filter(isTable));
  const beside = tables.find(({ name }) => name === table?.beside);
  const ofColumn = (name: string) => {
    const [home, key = ""] = name.split(".");
    return key === "" ? undefined : own(tables.find((one) => one.name === home)?.columns, key);
  };
  return (name) =>
    ofColumn(name) ??
    own(table?.columns, name) ??
    own(beside?.columns, name) ??
    sheets
      .flatMap(({ blocks }) => blocks)
      .map((block) => ("cells" in block ? own(block.cells, name) : undefined))
      .find((found) => found !== undefined);
}

/** A declared one, and not what every JavaScript object has under such a name. */
function own<T>(declared: Readonly<Record<string, T>> | undefined, name: string): T | undefined {
  return declared !== undefined && Object.hasOwn(declared, name) ? declared[name] : undefined;
}

const isTable = (block: Block): block is TableBlock => block.kind === "table";
