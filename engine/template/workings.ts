import type {
  Block,
  CellDeclaration,
  LinesBlock,
  SheetDeclaration,
  TableBlock,
} from "./declare.js";
import { bandWidth, messageWidth } from "./layout.js";
import { columnsOn, messageKeysOn, messagesAtHome, whereOf, workingsSheet } from "./spread.js";

const purpose = "Steps on the way, row by row, and every message by itself: nothing here is typed.";

/**
 * The sheets, followed by one of workings: the cells and tables declared as such, of each table the checks where
 * a row has several messages, and those columns for which its page has no room. None, without any.
 */
export function withWorkings(sheets: readonly SheetDeclaration[]): readonly SheetDeclaration[] {
  const workings: Block[] = [];
  const left = sheets
    .map(withChecksBelow)
    .map(withUnseen)
    .map(
      (sheet): SheetDeclaration => ({
        ...sheet,
        blocks: sheet.blocks.flatMap((block): Block[] => {
          // the sheet of workings is one of the bid's
          if (sheet.afterwards) return [block];
          const heading = `${sheet.name}: ${block.heading}`;
          if (block.kind === "lines") return leaveLines(block, heading, workings);
          if (block.kind !== "table") return [block];
          if (block.working) {
            workings.push({ ...leaveColumns(block, false), heading });
            return [];
          }
          const spread = leaveColumns(block, sheet.printed !== false);
          if (spread !== block) workings.push({ kind: "part", heading, of: spread });
          return [spread];
        }),
      }),
    );
  if (workings.length === 0) return sheets;
  const staying = left.filter(
    ({ blocks }, i) => blocks.length > 0 || sheets[i]?.blocks.length === 0,
  );
  return [
    ...staying,
    { name: workingsSheet, purpose, blocks: workings, printed: false, hidden: true },
  ];
}

const isWorking = (cell: CellDeclaration): boolean =>
  (cell.kind === "calc" || cell.kind === "published") && cell.working === true;

/**
 * The checks of single cells stand together at the foot of their sheet, so that figures come first; they
 * are not printed, since those that fail stand on sheet Checks.
 */
function withChecksBelow(sheet: SheetDeclaration): SheetDeclaration {
  if (sheet.hidden || sheet.portrait) return sheet;
  const checks: Record<string, CellDeclaration> = {};
  const blocks = sheet.blocks.flatMap((block): Block[] => {
    if (block.kind !== "lines") return [block];
    const all = Object.entries(block.cells);
    const staying = all.filter(([, { kind }]) => kind !== "check");
    if (staying.length === all.length) return [block];
    for (const [name, cell] of all) if (cell.kind === "check") checks[name] = cell;
    return staying.length === 0 ? [] : [{ ...block, cells: Object.fromEntries(staying) }];
  });
  if (Object.keys(checks).length === 0) return sheet;
  const foot: LinesBlock = {
    kind: "lines",
    heading: "Checks of this sheet",
    printed: false,
    cells: checks,
  };
  return { ...sheet, blocks: [...blocks, foot] };
}

/** Tables that nobody has in sight say of their rows what holds, and sheet Checks what to do. */
function withUnseen(sheet: SheetDeclaration): SheetDeclaration {
  const blocks = sheet.blocks.map(
    (block): Block =>
      block.kind === "table" && (sheet.hidden || block.working)
        ? { ...block, unseen: true }
        : block,
  );
  return { ...sheet, blocks };
}

function leaveLines(block: LinesBlock, heading: string, workings: Block[]): Block[] {
  const cells = Object.entries(block.cells);
  const moved = cells.filter(([, cell]) => isWorking(cell));
  if (moved.length === 0) return [block];
  workings.push({ kind: "lines", heading, cells: Object.fromEntries(moved) });
  const staying = cells.filter(([, cell]) => !isWorking(cell));
  return staying.length === 0 ? [] : [{ ...block, cells: Object.fromEntries(staying) }];
}

function leaveColumns(table: TableBlock, onPaper: boolean): TableBlock {
  const several = messagesAtHome(table).length > 1;
  const moved = Object.entries(table.columns).flatMap(([key, cell], i) => {
    const isHere = whereOf(table, key) === undefined;
    return isHere && i > 0 && (isWorking(cell) || (several && cell.kind === "check")) ? [key] : [];
  });
  const spread = moving(table, moved);
  return onPaper ? moving(spread, withoutRoom(spread)) : spread;
}

function moving(table: TableBlock, keys: readonly string[]): TableBlock {
  if (keys.length === 0) return table;
  const away = Object.fromEntries(keys.map((key) => [key, workingsSheet]));
  return { ...table, elsewhere: { ...table.elsewhere, ...away } };
}

/** The columns too many for the width of a page: the last that nobody types in, results set in bold at the end. */
function withoutRoom(table: TableBlock): string[] {
  const columns = columnsOn(table, undefined);
  const message = messageKeysOn(table, undefined).length > 0 ? messageWidth : 0;
  const excess = columns.length + message - (bandWidth + 1);
  if (excess <= 0) return [];
  const isBold = (key: string) => {
    const cell = table.columns[key];
    return cell?.kind === "calc" && cell.strong === true;
  };
  const movable = columns
    .slice(1)
    .filter((key) => Object.hasOwn(table.columns, key) && table.columns[key]?.kind !== "input")
    .reverse();
  const inTurn = [...movable.filter((key) => !isBold(key)), ...movable.filter(isBold)];
  return inTurn.slice(0, excess);
}
