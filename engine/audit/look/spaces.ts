import { columnLetters } from "../../workbook/read/address.js";
import type { SheetLook } from "../../workbook/read/look/content.js";
import { orWriteAgain } from "../cures.js";
import type { Finding } from "../finding.js";
import type { SheetPair } from "../sheet-pairs.js";
import { grouped } from "../subject.js";
import { type LookPair, lookFinding } from "./compared.js";

/** Less than this of the room that a text was given cuts it off. */
const leastShare = 0.7;
/** Points of a row, and digits of a column, where a sheet says nothing. */
const [usualHeight, usualWidth] = [15, 8.43];

/** Is a row of a sheet lower than its texts want, as they are now? */
export const hasLowRows = (pairs: readonly SheetPair[]): boolean =>
  pairs.some((pair) => {
    const [now, then] = [pair.found.look, pair.fresh.look];
    if (now === undefined || then === undefined) return false;
    return lowRows(pair, now, then).length > 0;
  });

interface LowRow {
  readonly row: number;
  readonly home: number;
  readonly is: number;
  readonly wanted: number;
}

function lowRows(pair: SheetPair, now: SheetLook, then: SheetLook): LowRow[] {
  const rows = new Map(pair.shown.map(({ at, home }) => [at.row, home.row]));
  return [...rows].flatMap(([row, home]) => {
    const [is, wanted] = [heightOf(now, row), heightOf(then, home)];
    return now.rows.get(row)?.hidden || !isTooSmall(is, wanted) ? [] : [{ row, home, is, wanted }];
  });
}

const told = (size: number): string => String(Number(size.toFixed(1)));

const isTooSmall = (is: number, wanted: number): boolean => is < wanted * leastShare;

/**
 * Rows and columns that were made too small for what stands in them; hidden ones are told elsewhere. A row that
 * is as high as it was written, though its text is longer since, is only to know.
 */
export function checkSpaces(pair: LookPair): Finding[] {
  const { found, now, then, written } = pair;
  const squeezed: Finding[] = [];
  const outgrown: Finding[] = [];
  for (const { row, home, is, wanted } of lowRows(pair, now, then)) {
    const where = `${found.name}!${row}:${row}`;
    const expected = `${told(wanted)} points`;
    if (written === undefined || isTooSmall(is, heightOf(written, home))) {
      squeezed.push(
        lookFinding(where, `a row ${told(is)} points high, which cuts its text`, expected),
      );
    } else {
      outgrown.push(
        lookFinding(
          where,
          `a row ${told(is)} points high, as written, whose text is longer now`,
          expected,
          {
            grade: "to know",
            advice: `Make the row higher to read it all, ${orWriteAgain}`,
          },
        ),
      );
    }
  }
  const columns = new Map(pair.shown.map(({ at, home }) => [at.column, home.column]));
  const narrow = [...columns].flatMap(([column, home]) => {
    const [is, was] = [columnOf(now, column), columnOf(then, home)];
    if (is.hidden || is.width >= was.width * leastShare) return [];
    const letters = columnLetters(column);
    const found_ = `a column ${told(is.width)} digits wide, which cuts its text`;
    return [
      lookFinding(`${found.name}!${letters}:${letters}`, found_, `${told(was.width)} digits`),
    ];
  });
  // working sheets that are hidden as they were written
  const isUnread = found.state !== "visible" && pair.fresh.state !== "visible";
  const all = now.hidesRows && !then.hidesRows;
  return [
    ...ofLines(squeezed, "rows", found.name),
    ...(isUnread ? [] : ofLines(outgrown, "rows", found.name)),
    ...ofLines(narrow, "columns", found.name),
    ...(all
      ? [lookFinding(`sheet ${found.name}`, "all rows hidden but those set apart", "rows in sight")]
      : []),
  ];
}

/** Many lines as one finding: `7 rows of sheet Crew: 5, 8, 9`. */
function ofLines(findings: readonly Finding[], things: string, sheet: string): Finding[] {
  if (findings.length <= 3) return [...findings];
  return grouped(findings, 3).map((one) => {
    const lines = findings.slice(0, 12).map(({ where }) => where.replace(/^.*:/, ""));
    const more = findings.length > 12 ? `, and ${findings.length - 12} more` : "";
    return {
      ...one,
      where: `${findings.length} ${things} of sheet ${sheet}: ${lines.join(", ")}${more}`,
    };
  });
}

const heightOf = ({ rows, defaultHeight }: SheetLook, row: number): number =>
  rows.get(row)?.height ?? defaultHeight ?? usualHeight;

function columnOf({ columns }: SheetLook, column: number): { width: number; hidden: boolean } {
  const own = columns.find(({ from, to }) => column >= from && column <= to);
  return { width: own?.width ?? usualWidth, hidden: own?.hidden ?? false };
}
