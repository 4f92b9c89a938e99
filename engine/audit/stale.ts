import type { Finding } from "./finding.js";

/** A stored result or two may have been put in; more of them are a workbook that was not recalculated. */
const mostAlone = 3;
const mostSheets = 8;

/** What to do about results that do not follow. */
export const recalculate =
  "Open the workbook in a spreadsheet program, recalculate everything (in LibreOffice Ctrl+Shift+F9, in most others Ctrl+Alt+F9) and save it.";

/**
 * Stored results that do not follow, as one finding that says on which sheets they are, where they are many.
 * @param telling the names of cells, the first of which that is among them is told; else the first of all
 */
export function staleAsOne(
  findings: readonly Finding[],
  telling: readonly string[] = [],
): Finding[] {
  if (findings.length <= mostAlone) return [...findings];
  const sheets = [...new Set(findings.map(({ where }) => where.slice(0, where.lastIndexOf("!"))))];
  const listed = sheets.slice(0, mostSheets).join(", ");
  const more = sheets.length > mostSheets ? `, and ${sheets.length - mostSheets} more` : "";
  const [first] = findings as [Finding, ...Finding[]];
  const among = telling.map((one) => findings.find(({ name }) => name === one));
  const { name: _, ...one } = among.find((found) => found !== undefined) ?? first;
  const named = _ === undefined ? one.where : `${one.where} (${_})`;
  return [
    {
      ...one,
      names: findings.map(({ where, name }) => name ?? where),
      where: `${findings.length} cells on ${sheets.length === 1 ? "sheet" : `${sheets.length} sheets:`} ${listed}${more}`,
      found: `the workbook was not recalculated since it was changed; ${named} shows ${one.found.replace(/^the stored result /, "")}`,
    },
  ];
}
