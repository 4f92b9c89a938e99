import {
  type BookDeclaration,
  book,
  type CellDeclaration,
  type InputDeclaration,
  isOffice,
  type LinesBlock,
  type SheetDeclaration,
  type TableBlock,
} from "./declare.js";
import { copyName } from "./implied-names.js";
import { whereOf } from "./spread.js";

/**
 * Beside each input that is asked of the office stands what the office book says, as it was when the
 * bid was written; its status has a word where the job says otherwise.
 */

/** The book's own value of an input. */
const copyOf = ({ quantity, decimals }: InputDeclaration): BookDeclaration => ({
  ...book(quantity, "Office book", decimals === undefined ? {} : { decimals }),
  beside: true,
});

/** What stands beside the office inputs of a block of lines, by the name of the input. */
export function besideLines(block: LinesBlock): Map<string, Record<string, CellDeclaration>> {
  return new Map(
    Object.entries(block.cells).flatMap(([name, declaration]) =>
      isOffice(declaration) ? [[name, { [copyName(name)]: copyOf(declaration) }]] : [],
    ),
  );
}

/** The sheets with the columns put into their tables that stand beside office inputs. */
export function withBookColumns(sheets: readonly SheetDeclaration[]): SheetDeclaration[] {
  return sheets.map((sheet) => ({
    ...sheet,
    blocks: sheet.blocks.map((block) => {
      if (block.kind === "part") return { ...block, of: withColumns(block.of) };
      return block.kind === "table" ? withColumns(block) : block;
    }),
  }));
}

function withColumns(table: TableBlock): TableBlock {
  if (!Object.values(table.columns).some(isOffice)) return table;
  const columns: Record<string, CellDeclaration> = {};
  const elsewhere: Record<string, string> = { ...table.elsewhere };
  const put = (key: string, cell: CellDeclaration, beside: string) => {
    columns[key] = cell;
    const where = whereOf(table, beside);
    if (where !== undefined) elsewhere[key] = where;
  };
  for (const [key, cell] of Object.entries(table.columns)) {
    columns[key] = cell;
    if (isOffice(cell)) put(copyName(key), copyOf(cell), key);
  }
  const spread = table.elsewhere === undefined ? {} : { elsewhere };
  return { ...table, ...spread, columns };
}
