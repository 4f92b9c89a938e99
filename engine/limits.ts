/**
 * What a workbook can hold. A file beyond these is refused or "repaired" by some program, so that
 * templates and inputs beyond them are refused here.
 *
 * Sources: [MS-OI29500], "Office Implementation Information for ISO/IEC 29500 Standards Support",
 * sections 2.1.613 (validation) and 2.1.1085 (formula), and Microsoft's page "Excel specifications
 * and limits", both at learn.microsoft.com and support.microsoft.com. What neither says is marked.
 */
export const limits = {
  /** Characters of a formula (2.1.1085). */
  formula: 8192,
  /** Functions within one another, and arguments of a function (specifications and limits). */
  nesting: 64,
  arguments: 255,
  /** Characters of a text within a formula (from memory: "Text values in formulas are limited to 255 characters"). */
  literal: 255,
  /** Characters and line feeds of the text of a cell, or of a note on one (specifications and limits). */
  cellText: 32_767,
  lineFeeds: 253,
  /** Cells of a worksheet (specifications and limits). */
  rows: 1_048_576,
  columns: 16_384,
  /** Characters of a sheet's name and of a defined name (from memory). */
  sheetName: 31,
  name: 255,
  /** Characters of a header or footer (specifications and limits). */
  footer: 255,
  /** Characters of what validation says: titles, message of an error, prompt (2.1.613). */
  validationTitle: 32,
  validationError: 224,
  validationPrompt: 255,
  /** Characters of a list of choices, with its quotes (from memory). */
  choices: 255,
} as const;

/** Why a cell cannot hold this text, or undefined where it can. */
export function cellTextTrouble(text: string): string | undefined {
  if (text.length > limits.cellText) {
    return `has ${text.length} characters; a cell holds ${limits.cellText}`;
  }
  const feeds = text.split("\n").length - 1;
  if (feeds > limits.lineFeeds) return `has ${feeds} line feeds; a cell holds ${limits.lineFeeds}`;
  return undefined;
}
