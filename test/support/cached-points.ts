import { CellError } from "../../engine/formula/value.js";
import type { WorkbookContent } from "../../engine/workbook/read/content.js";
import { type Cached, cachedIn, chartsIn } from "./chart-parts.js";

/** The cells of an area on one sheet, `'A sheet'!$B$3:$B$9`, one under another. */
export function cellsAt(content: WorkbookContent, area: string): unknown[] | undefined {
  const [, quoted, bare, letters, from, to = from] =
    /^(?:'([^']+)'|(\w+))!\$([A-Z]+)\$(\d+)(?::\$\3\$(\d+))?$/.exec(area) ?? [];
  const sheet = content.sheets.find(({ name }) => name === (quoted ?? bare));
  if (sheet === undefined) return undefined;
  return Array.from({ length: Number(to) - Number(from) + 1 }, (_, i) => {
    return sheet.cells.get(`${letters}${Number(from) + i}`)?.value ?? null;
  });
}

/** Where what a chart has cached is not what its cells hold, or where it refers to no cells. */
export function staleCaches(bytes: Uint8Array, content: WorkbookContent): string[] {
  return [...chartsIn(bytes)].flatMap(([part, chart]) =>
    cachedIn(chart)
      // the names of series that programs write as formulas
      .filter(({ formula }) => !formula.startsWith('"'))
      .flatMap((cached) => staleIn(cached, content).map((fault) => `${part}: ${fault}`)),
  );
}

function staleIn({ formula, count, points }: Cached, content: WorkbookContent): string[] {
  const cells = cellsAt(content, formula);
  if (cells === undefined) return [`${formula} is no area of cells`];
  if (cells.length !== count) return [`${formula} has ${cells.length} cells, ${count} are cached`];
  return cells.flatMap((value, i) => {
    if (value instanceof CellError || typeof value === "object") {
      return value === null && !points.has(i) ? [] : [`${formula}, cell ${i + 1} is no value`];
    }
    const cached = points.get(i) ?? "";
    const same =
      typeof value === "number"
        ? Math.abs(Number(cached) - value) <= 1e-9 * Math.max(1, Math.abs(value))
        : cached === String(value);
    return same ? [] : [`${formula}, cell ${i + 1} holds ${value}, ${cached} is cached`];
  });
}
