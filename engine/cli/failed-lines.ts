import type { FailedCheck } from "../job/failed-checks.js";

const mostLines = 3;

/**
 * Failed checks as lines for people: sheet, label and sentence. More than three rows of one
 * column are one line with their number and the first three.
 */
export function failedLines(failed: readonly FailedCheck[]): string[] {
  const byName = new Map<string, FailedCheck[]>();
  for (const one of failed) byName.set(one.cell.name, [...(byName.get(one.cell.name) ?? []), one]);
  return [...byName.values()].flatMap((alike) => {
    if (alike.length <= mostLines) {
      return alike.map((one) => `${headOf(one)}${rowOf(one)}: ${one.message}`);
    }
    const [first] = alike as [FailedCheck];
    const some = alike.slice(0, mostLines).map(({ message }) => message);
    return [
      `${headOf(first)}: ${alike.length} rows, such as\n  ${some.join("\n  ")}\n  All are on the sheet Checks, or: rillbook show <job> ${first.cell.table ?? first.cell.name}`,
    ];
  });
}

const headOf = ({ cell, sheet, level }: FailedCheck): string =>
  `${level === "must" ? "check failed" : "warning"}: ${sheet}, ${cell.declaration.label}`;

const rowOf = ({ cell }: FailedCheck): string =>
  cell.row === undefined ? "" : ` (row ${cell.row})`;
