import type { Finding } from "./finding.js";
import { goneFindings, goneSheets } from "./gone-sheets.js";
import { heldValue, placeOf, type Subject, said } from "./subject.js";

/** Sheets that are gone, names that are gone or point elsewhere, rows that were deleted or put in. */
export function checkPlaces(subject: Subject): Finding[] {
  const gone = goneSheets(subject);
  const told = new Set(gone.flatMap(({ cells }) => cells.map(({ id }) => id)));
  return [...goneFindings(gone), ...missing(subject, told), ...moved(subject)];
}

/** @param told the cells of sheets that are told as gone */
function missing({ model, match }: Subject, told: ReadonlySet<string>): Finding[] {
  const rows = new Map<string, string[]>();
  const names = new Map<string, string>();
  for (const { id, name, reason } of match.missing) {
    if (told.has(id)) continue;
    const cell = model.byId.get(id);
    if (cell?.table !== undefined && reason.startsWith("its row")) {
      const key = `${cell.table}[${cell.row}]`;
      rows.set(key, [...(rows.get(key) ?? []), id]);
    } else if (!names.has(name)) names.set(name, reason);
  }
  const findings: Finding[] = [];
  for (const [row, ids] of rows) {
    findings.push({
      grade: "wrong",
      code: "row-missing",
      where: `table row ${row}`,
      found: `the row was deleted (${ids.length} cells)`,
      expected: "every row of the table: rows that are not used stay empty",
      advice: "Clear the inputs of a row instead of deleting it. Write the bid again.",
    });
  }
  for (const [name, reason] of names) {
    findings.push({
      grade: "wrong",
      code: "name-missing",
      where: `name ${name}`,
      name,
      found: reason,
      expected: `the name ${name}, standing for its cells`,
      advice: "Define the name again for its cell, or write the bid again.",
    });
  }
  return findings;
}

/** Where spreadsheet programs keep their names. */
const names =
  "in LibreOffice Sheet, Named Ranges and Expressions, Manage; in most others Formulas, Name Manager";

function moved({ match }: Subject): Finding[] {
  const findings: Finding[] = [];
  for (const { name, to, home } of match.stray) {
    const own = home === undefined ? undefined : placeOf(home);
    findings.push({
      grade: "wrong",
      code: "name-moved",
      where: `name ${name}`,
      name,
      found: `the name stands for ${to}, away from the cells it belongs to`,
      expected:
        own === undefined ? "the cell beside its label" : `${own}, the cell beside its label`,
      advice:
        own === undefined
          ? "Point the name to its cell again: every formula with this name reads the wrong cell."
          : `${name} should stand for ${own}: point it back (${names}), or start from the workbook as it was written. Until then every formula with this name reads the wrong cell.`,
    });
  }
  for (const { name, sheet } of match.shadowed) {
    findings.push({
      grade: "wrong",
      code: "name-moved",
      where: `name ${name} of sheet ${sheet}`,
      name,
      found: "a second name of the same spelling that holds on this sheet alone",
      expected: "one name for the whole workbook",
      advice: "Delete the sheet's own name: its formulas read that cell instead.",
    });
  }
  for (const { table, sheet, line, filled } of match.inserted) {
    const values = [...filled].map(([name, { value }]) => `${name} ${said(heldValue(value))}`);
    findings.push({
      grade: values.length === 0 ? "to know" : "wrong",
      code: "row-inserted",
      where: `${sheet}, line ${line}`,
      found:
        values.length === 0
          ? `an empty line within the table ${table}`
          : `a line within the table ${table} with ${values.slice(0, 6).join(", ")}`,
      expected: "the rows of the template",
      advice:
        values.length === 0
          ? "Nothing: the formulas pass over it."
          : "Move its values to an unused row of the table, where every formula sees them.",
    });
  }
  return findings;
}
