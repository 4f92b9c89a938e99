/** `C`, from 3. */
export function columnLetters(column: number): string {
  const rest = (column - 1) % 26;
  const letter = String.fromCharCode(65 + rest);
  return column <= 26 ? letter : columnLetters((column - 1 - rest) / 26) + letter;
}

export const addressOf = (column: number, line: number): string =>
  `${columnLetters(column)}${line}`;
