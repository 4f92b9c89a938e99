import { cellTextTrouble } from "../limits.js";

/** A text as it is kept, or why it cannot be. */
export type Taken = { readonly text: string } | { readonly trouble: string };

/** Control characters besides tab and line feed, halves of a pair, and the two that XML leaves out. */
const refused = /[^\P{Cc}\t\n]|\p{Cs}|[\ufffe\uffff]/u;

/**
 * A text on its way in (a record, `set`, an office book, a cell of an edited workbook) as it is kept:
 * ends of lines as line feeds, since a workbook gives no other back. Refused with the reason where no
 * workbook could hold it: control characters, halves of a character (XML 1.0, section 2.2, and C1,
 * which a terminal would obey), and more than a cell holds.
 */
export function takenText(given: string): Taken {
  const text = given.includes("\r") ? given.replaceAll(/\r\n?/g, "\n") : given;
  const at = text.search(refused);
  if (at >= 0) {
    return {
      trouble: `holds the character ${codeOf(text, at)} (place ${at + 1}), which no workbook keeps. Type the text again without it.`,
    };
  }
  const long = cellTextTrouble(text);
  return long === undefined ? { text } : { trouble: `${long}. Shorten it.` };
}

/** The same for a text of one line, such as a job's number: neither line feeds nor tabs. */
export function takenLine(given: string): Taken {
  const taken = takenText(given);
  if ("trouble" in taken || !/[\t\n]/.test(taken.text)) return taken;
  return { trouble: "holds a tab or the end of a line. Write it in one line." };
}

const codeOf = (text: string, at: number): string =>
  `U+${(text.codePointAt(at) as number).toString(16).toUpperCase().padStart(4, "0")}`;
