/** A formula that cannot be read or makes no sense; `at` is the place in its text. */
export class FormulaError extends Error {
  readonly formula: string;
  readonly at: number;
  readonly reason: string;

  constructor(formula: string, at: number, reason: string) {
    super(`${reason} (at character ${at + 1} of: ${formula})`);
    this.name = "FormulaError";
    this.formula = formula;
    this.at = at;
    this.reason = reason;
  }
}
