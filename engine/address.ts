/** `C`, from 3. Throws RangeError for what is no column, a whole number from 1. */
export function columnLetters(column: number): string {
  if (!Number.isInteger(column) || column < 1) throw new RangeError(`${column} is no column.`);
  const rest = (column - 1) % 26;
  const letter = String.fromCharCode(65 + rest);
  return column <= 26 ? letter : columnLetters((column - 1 - rest) / 26) + letter;
}

export const addressOf = (column: number, line: number): string =>
  `${columnLetters(column)}${line}`;
