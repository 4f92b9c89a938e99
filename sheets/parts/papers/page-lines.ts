import {
  type Block,
  type CalcDeclaration,
  type ChartBlock,
  calc,
  count,
  lines as linesBlock,
  prose,
  type Reader,
  table,
  text,
  yesno,
} from "../../../engine/template/index.js";
import { headingMark, type PageLine } from "../../plan/page-line.js";

/** Drawings that stand in a page after so many of its lines, wanted or not. */
export interface Drawn {
  readonly after: number;
  readonly charts: readonly ChartBlock[];
}

/**
 * Lines for a page that people outside the office read: those that are wanted move
 * up, so that the page has no gaps, whatever the job. Returns the working lists (for
 * a sheet of their own) and the page's blocks. The unwanted lines stay blank there.
 */
export function pageLines(
  name: string,
  title: string,
  reader: Reader,
  lines: readonly PageLine[],
  { after, charts }: Drawn = { after: 0, charts: [] },
): { working: Block[]; page: Block[] } {
  const [choice, list] = [`${name}_choice`, `${name}_lines`];
  const at = (row: number): PageLine => lines[row - 1] as PageLine;
  const wanted = table(
    choice,
    `Lines wanted, ${title}`,
    { rows: lines.length },
    {
      wanted: calc(yesno, (row) => at(row).when ?? "TRUE", "Wanted"),
      place: calc(count, "above.place+IF(wanted,1,0)", "Place", { first: "IF(wanted,1,0)" }),
    },
  );
  const worded = table(
    list,
    `Lines for ${title}`,
    { rows: lines.length, beside: choice, filled: "wanted" },
    {
      says: calc(text, (row) => at(row).says, "Line", { reader }),
    },
  );
  const before = charts.length === 0 ? lines.length : after;
  const cells = lineCells(name, before, lines.length);
  const written = (heading: string, from: number, to: number) =>
    prose(heading, Object.fromEntries(cells.slice(from, to)), { headingMark: headingMark.trim() });
  const rest = before < lines.length ? [...charts, written("", before, lines.length)] : [];
  const opening = linesBlock(`Opening of ${title}`, {
    [`${name}_opened`]: calc(count, `INDEX(${choice}.place,${before})`, "Lines of the opening"),
  });
  return {
    working: charts.length === 0 ? [wanted, worded] : [wanted, worded, opening],
    page: [written(title, 0, before), ...rest],
  };
}

/** The lines of a page: those among the first so many, then the rest. */
function lineCells(name: string, before: number, all: number): [string, CalcDeclaration][] {
  const [says, place] = [`${name}_lines.says`, `${name}_choice.place`];
  return Array.from({ length: all }, (_, i) => {
    const row = i < before ? `${i + 1}` : `${name}_opened+${i + 1 - before}`;
    const formula = `IF(${row}<=INDEX(${place},${i < before ? before : all}),PICK(${says},${place},${row}),"")`;
    // the line that says DRAFT stands also where an error in a later one leaves no place to count
    const first = `IF(INDEX(${name}_choice.wanted,1),INDEX(${says},1),PICK_OR(${says},${place},1,""))`;
    return [`${name}_line_${i + 1}`, calc(text, i === 0 ? first : formula, "")];
  });
}
