import { columnLetters, positionOf } from "../../workbook/read/address.js";
import type { WorkbookContent } from "../../workbook/read/content.js";
import type { Finding } from "../finding.js";
import type { SheetPair } from "../sheet-pairs.js";
import { short } from "../subject.js";
import { type LookPair, lookFinding } from "./compared.js";

/** Gnumeric names them without the mark of a program's own name. */
const itsName = /^(_xlnm\.)?print_titles$/i;
const rows = /^\$?(?:[A-Z]{1,3})?\$?(\d{1,7}):\$?(?:[A-Z]{1,3})?\$?(\d{1,7})$/i;
const columns = /^\$?([A-Z]{1,3}):\$?([A-Z]{1,3})$/i;

interface Repeated {
  readonly rows: readonly [number, number] | undefined;
  readonly columns: readonly [number, number] | undefined;
}

/** Are other rows printed again on each page than as the workbook would be written now? */
export const repeatsOthers = (
  pairs: readonly SheetPair[],
  content: WorkbookContent,
  freshContent: WorkbookContent,
): boolean =>
  pairs.some((pair) => {
    const [is, expected] = repeated(pair, content, freshContent);
    return is !== expected;
  });

/**
 * Rows and columns that repeat on each page, where they are not those that the sheet is written with. A table that was
 * shorter as it was written had none: that is only to know.
 */
export function titles(pair: LookPair): Finding[] {
  const { found, content, freshContent, onceContent } = pair;
  const [is, expected] = repeated(pair, content, freshContent);
  if (is === expected) return [];
  const what = `${is} printed again on each page`;
  const asWritten = onceContent !== undefined && repeated(pair, content, onceContent)[1] === is;
  const advice = "Take the workbook and bid again: the pages are laid out for what they say now.";
  return [
    lookFinding(
      `sheet ${found.name}`,
      asWritten ? `${what}, as written` : what,
      expected,
      asWritten ? { grade: "to know", advice } : {},
    ),
  ];
}

/** What is printed again on each page of a sheet, in words, and what another writing of it has printed, where it stands now. */
function repeated(
  { found, fresh, map }: Pick<SheetPair, "found" | "fresh" | "map">,
  content: WorkbookContent,
  other: WorkbookContent,
): readonly [string, string] {
  const now = repeatedOn(content, found.name);
  const then = repeatedOn(other, fresh.name);
  const row = (at: number) => map.to({ row: at, column: 1 })?.row ?? at;
  const column = (at: number) => map.to({ row: 1, column: at })?.column ?? at;
  const [first, last] = then?.rows ?? [];
  const [left, right] = then?.columns ?? [];
  const expected = said(
    first === undefined || last === undefined ? undefined : [row(first), row(last)],
    left === undefined || right === undefined ? undefined : [column(left), column(right)],
  );
  // what cannot be read is none, as programs take it
  return [said(now?.rows, now?.columns), expected];
}

function repeatedOn({ names }: WorkbookContent, sheet: string): Repeated | undefined {
  const own = names.find(
    ({ name, scope, text }) => scope === sheet && itsName.test(name) && !text.includes("#REF!"),
  );
  if (own === undefined) return undefined;
  const parts = short(own.text, 400)
    .split(/,(?=(?:[^']*'[^']*')*[^']*$)/)
    .map((part) => part.slice(part.lastIndexOf("!") + 1).trim());
  const byRow = parts.map((part) => rows.exec(part)).find((one) => one !== null);
  const byColumn = parts.map((part) => columns.exec(part)).find((one) => one !== null);
  return {
    rows: byRow === undefined ? undefined : [Number(byRow[1]), Number(byRow[2])],
    columns: byColumn === undefined ? undefined : [columnAt(byColumn[1]), columnAt(byColumn[2])],
  };
}

const columnAt = (letters = ""): number => positionOf(`${letters.toUpperCase()}1`)?.column ?? 0;

function said(rows: Repeated["rows"], columns: Repeated["columns"]): string {
  const [one, other] = rows ?? [];
  const [left, right] = columns ?? [];
  const parts = [
    ...(one === undefined || other === undefined
      ? []
      : [one === other ? `row ${one}` : `rows ${one} to ${other}`]),
    ...(left === undefined || right === undefined
      ? []
      : [
          left === right
            ? `column ${columnLetters(left)}`
            : `columns ${columnLetters(left)} to ${columnLetters(right)}`,
        ]),
  ];
  return parts.length === 0 ? "no row" : parts.join(" and ");
}
