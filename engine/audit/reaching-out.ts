/** Functions that fetch from outside, run programs, or read cells that their text names. */
const functions =
  /(?<![\w.])(?:_xl\w+\.)*(WEBSERVICE|FILTERXML|RTD|CALL|REGISTER(?:\.ID)?|EXEC|DDE|IMAGE|STOCKHISTORY|CUBE[A-Z]+|EVALUATE|SQL\.REQUEST|GETPIVOTDATA)\s*\(/i;

/** `program|'topic'!item` (dynamic data exchange), `[1]Sheet!A1` (another workbook), a link to a place outside. */
const exchange = /(^|[^\w"])'?[A-Za-z][\w.]*'?\s*\|/;
const otherBook = /\[[^\]]{1,300}\][^!]{0,300}!|'[^']{0,300}\[[^']{1,300}\][^']{0,300}'!/;
const outsideLink = /HYPERLINK\s*\(\s*(?!"#)/i;

/** What in a formula reaches out of the workbook, in words; undefined where nothing does. */
export function reachingOut(formula: string): string | undefined {
  const bare = formula.replace(/"(?:[^"]|"")*"/g, '""');
  const call = functions.exec(bare);
  if (call !== null) return `the function ${(call[1] as string).toUpperCase()}`;
  if (exchange.test(bare)) return "an exchange of data with another program";
  if (otherBook.test(bare)) return "a cell of another workbook";
  return outsideLink.test(formula) ? "a link to a place outside" : undefined;
}
