import type { CellValue } from "./content.js";
import type { SharedTexts } from "./plain-strings.js";
import { WorkbookRefused } from "./refused.js";
import { booleanOf, unescaped } from "./text.js";

/** What the value of a cell depends on besides its own text. */
export interface ValueContext {
  readonly sharedStrings: SharedTexts;
  readonly date1904: boolean;
  /** The places of shared texts a part of which is set apart, where the look is asked for. */
  readonly uneven?: ReadonlySet<number>;
}

const number = /^[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?$/;
const dateTime = /^(\d{4}-\d{2}-\d{2})(?:T(\d{2}:\d{2}(?::\d{2}(?:\.\d+)?)?))?Z?$/;
const msPerDay = 86400e3;

/**
 * Turns the text of <v> into a value, by the type of the cell (ISO/IEC 29500-1 §18.18.11).
 * Dates written out as text (type "d") become serial numbers. Throws WorkbookRefused for text that does
 * not fit the type: a guess here would be a wrong price there.
 */
export function cellValue(
  type: string,
  text: string,
  where: string,
  { sharedStrings, date1904 }: ValueContext,
): CellValue {
  if (type === "str") return unescaped(text);
  const trimmed = text.trim();
  if (trimmed === "") return null;
  switch (type) {
    case "n": {
      const value = number.test(trimmed) ? Number(trimmed) : Number.NaN;
      if (Number.isFinite(value)) return value;
      throw badCell(where, `holds ${quoted(text)} as a number`);
    }
    case "s": {
      const shared = /^\d{1,9}$/.test(trimmed) ? sharedStrings.at(Number(trimmed)) : undefined;
      if (shared !== undefined) return shared;
      throw badCell(
        where,
        `points to text ${quoted(text)} of ${sharedStrings.length} shared texts`,
      );
    }
    case "b": {
      const value = booleanOf(trimmed.toLowerCase());
      if (value !== undefined) return value;
      throw badCell(where, `holds ${quoted(text)} as TRUE or FALSE`);
    }
    case "e":
      return { error: trimmed };
    case "d": {
      const [, date, time = "00:00"] = dateTime.exec(trimmed) ?? [];
      const instant = Date.parse(`${date}T${time}Z`);
      if (Number.isNaN(instant)) throw badCell(where, `holds ${quoted(text)} as a date`);
      return (instant - Date.UTC(1899, 11, 30)) / msPerDay - (date1904 ? 1462 : 0);
    }
    default:
      throw badCell(where, `has the unknown type ${quoted(type)}`);
  }
}

export function badCell(where: string, what: string): WorkbookRefused {
  return new WorkbookRefused(
    "workbook-cell",
    `Cell ${where} ${what}, which cannot be read with certainty. Open the workbook in a spreadsheet program, type the cell again and save.`,
  );
}

function quoted(text: string): string {
  return JSON.stringify(text.length > 40 ? `${text.slice(0, 40)}…` : text);
}
