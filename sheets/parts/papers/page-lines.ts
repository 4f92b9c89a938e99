import {
  type Across,
  type Block,
  type CalcDeclaration,
  calc,
  count,
  lines as linesBlock,
  number,
  type Reader,
  type TableBlock,
  table,
  text,
} from "../../../engine/template/index.js";
import { headingMark, type PlacedLine } from "../../plan/page-line.js";
import { groupedFlow } from "./grouped-lines.js";

/** A stretch of a page in which the lines of these sections follow one another. */
export interface Flow {
  /** The name of its table on the page. */
  readonly name: string;
  readonly sections: readonly string[];
  /** Where it stands across the page. */
  readonly across?: Across;
  /** Where lines stand that begin no row: across the page beside the one that does, line under line. */
  readonly beside?: Across;
  readonly paper?: Partial<NonNullable<TableBlock["paper"]>>;
}

const whole: Across = [1, 12];

interface Paged {
  /** Working lists, for a sheet of their own. */
  readonly working: readonly Block[];
  /** The stretches, by name. */
  readonly flows: Readonly<Record<string, TableBlock>>;
}

/**
 * Lines for a page that people outside the office read: within each stretch, those that are wanted
 * move up, so that the page has no gaps, whatever the job. Lines of a section that no stretch shows come
 * first, and are read by their row.
 */
export function pageLines<S extends string>(
  name: string,
  title: string,
  reader: Reader,
  lines: readonly PlacedLine<S>[],
  flows: readonly Flow[],
): Paged {
  const shown = flows.flatMap(({ sections }) => [...sections]);
  const of = (sections: readonly string[]) => sections.flatMap((one) => lines.filter(({ section }) => section === one));
  const apart = lines.filter(({ section }) => !shown.includes(section));
  const all = [...apart, ...of(shown)];
  const at = (row: number) => all[row - 1] as PlacedLine<S>;
  const [choice, list] = [`${name}_choice`, `${name}_lines`];
  const placed = (row: number) => {
    const when = at(row).when ?? "TRUE";
    if (row <= apart.length) return when === "TRUE" ? "0" : `IF(${when},0,0.5)`;
    const before = row === 1 ? "0" : "INT(above.place)";
    return when === "TRUE" ? `${before}+1` : `${before}+IF(${when},1,0.5)`;
  };
  const places = table(
    choice,
    `Lines wanted, ${title}`,
    { rows: all.length, note: "A line that is wanted has a whole number; one that is not, the half behind it." },
    { place: calc(number, placed, "Place", { first: placed(1), decimals: 1 }) },
  );
  const worded = table(
    list,
    `Lines for ${title}`,
    { rows: all.length, beside: choice, filled: "place=INT(place)" },
    { says: calc(text, (row) => at(row).says, "Line", { reader }) },
  );
  let last = apart.length;
  const counts: Record<string, CalcDeclaration> = {};
  const made: Record<string, TableBlock> = {};
  const joined: Block[] = [];
  for (const { name: flow, sections, across = whole, paper, beside } of flows) {
    const [before, rows] = [last, of(sections).length];
    last += rows;
    if (beside !== undefined) {
      const grouped = groupedFlow({ flow, choice, list, before, lines: of(sections), across, beside });
      joined.push(...grouped.working);
      counts[`${flow}_count`] = grouped.count;
      made[flow] = { ...grouped.page, paper: { ...grouped.page.paper, used: `${flow}_count`, ...paper } } as TableBlock;
      continue;
    }
    const start = before === 0 ? "0" : `INT(INDEX(${choice}.place,${before}))`;
    counts[`${flow}_start`] = calc(count, start, `Lines before, ${flow}`);
    counts[`${flow}_count`] = calc(count, `INT(INDEX(${choice}.place,${last}))-${flow}_start`, `Lines, ${flow}`);
    const line = (row: number) =>
      `IF(${row}<=${flow}_count,PICK(${list}.says,${choice}.place,${flow}_start+${row}),"")`;
    made[flow] = table(
      flow,
      "",
      {
        rows,
        paper: { across: { line: across }, headingMark: headingMark.trim(), used: `${flow}_count`, ...paper },
      },
      { line: calc(text, line, "") },
    );
  }
  return { working: [places, worded, ...joined, linesBlock(`Stretches of ${title}`, counts)], flows: made };
}
