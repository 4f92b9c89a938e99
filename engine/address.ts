/** The letters of the columns asked for, which are few and asked for with every cell. */
const known: string[] = [];
const mostKnown = 1000;

/** `C`, from 3. Throws RangeError for what is no column, a whole number from 1. */
export function columnLetters(column: number): string {
  const before = known[column];
  if (before !== undefined) return before;
  const letters = lettersOf(column);
  if (column < mostKnown) known[column] = letters;
  return letters;
}

function lettersOf(column: number): string {
  if (!Number.isInteger(column) || column < 1) throw new RangeError(`${column} is no column.`);
  const rest = (column - 1) % 26;
  const letter = String.fromCharCode(65 + rest);
  return column <= 26 ? letter : lettersOf((column - 1 - rest) / 26) + letter;
}

export const addressOf = (column: number, line: number): string =>
  `${columnLetters(column)}${line}`;
