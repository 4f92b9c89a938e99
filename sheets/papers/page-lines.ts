import {
  type Block,
  type CalcDeclaration,
  calc,
  count,
  prose,
  table,
  text,
  yesno,
} from "../../engine/template/index.js";

/** A line that a printed page may carry: its text, and when it is wanted. */
export interface PageLine {
  /** A text formula. */
  readonly says: string;
  /** A condition; the line is always there where it is absent. */
  readonly when?: string;
}

/** Marks a line as a heading: the page shows it in bold. */
export const headingMark = "■ ";

export const heading = (words: string, when?: string): PageLine => ({
  says: `"${headingMark}${words}"`,
  ...(when === undefined ? {} : { when }),
});

/** Stands on top of a page while the bid does not stand. */
export const draftLine: PageLine = {
  says: "~DRAFT, not to be handed out: checks that fail: {checks_failed|0}. See the sheet Checks.",
  when: "checks_failed>0",
};

/**
 * Lines for a page that people outside the office read: those that are wanted move
 * up, so that the page has no gaps, whatever the job. Returns the working list (for
 * a sheet of its own) and the page's block.
 */
export function pageLines(
  name: string,
  title: string,
  lines: readonly PageLine[],
): { working: Block; page: Block } {
  const list = `${name}_lines`;
  const at = (row: number): PageLine => lines[row - 1] as PageLine;
  const working = table(
    list,
    `Lines for ${title}`,
    { rows: lines.length },
    {
      says: calc(text, (row) => at(row).says, "Line"),
      wanted: calc(yesno, (row) => at(row).when ?? "TRUE", "Wanted"),
      place: calc(count, "above.place+IF(wanted,1,0)", "Place", { first: "IF(wanted,1,0)" }),
    },
  );
  const cells: Record<string, CalcDeclaration> = {};
  lines.forEach((_, i) => {
    const formula = `IFERROR(INDEX(${list}.says,MATCH(${i + 1},${list}.place,0)),"")`;
    cells[`${name}_line_${i + 1}`] = calc(text, formula, "");
  });
  return { working, page: prose(title, cells) };
}
