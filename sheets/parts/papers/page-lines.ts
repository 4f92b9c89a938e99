import {
  type Block,
  type CalcDeclaration,
  calc,
  count,
  prose,
  type Reader,
  table,
  text,
  yesno,
} from "../../../engine/template/index.js";
import { headingMark, type PageLine } from "../../plan/page-line.js";

/**
 * Lines for a page that people outside the office read: those that are wanted move
 * up, so that the page has no gaps, whatever the job. Returns the working lists (for
 * a sheet of their own) and the page's block. The unwanted lines stay blank there.
 */
export function pageLines(
  name: string,
  title: string,
  reader: Reader,
  lines: readonly PageLine[],
): { working: Block[]; page: Block } {
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
  const cells: Record<string, CalcDeclaration> = {};
  lines.forEach((_, i) => {
    const formula = `IF(${i + 1}<=INDEX(${choice}.place,${lines.length}),PICK(${list}.says,${choice}.place,${i + 1}),"")`;
    // the line that says DRAFT stands also where an error in a later one leaves no place to count
    const first = `IF(INDEX(${choice}.wanted,1),INDEX(${list}.says,1),PICK_OR(${list}.says,${choice}.place,1,""))`;
    cells[`${name}_line_${i + 1}`] = calc(text, i === 0 ? first : formula, "");
  });
  return {
    working: [wanted, worded],
    page: prose(title, cells, { headingMark: headingMark.trim() }),
  };
}
