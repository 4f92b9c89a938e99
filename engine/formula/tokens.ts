import { FormulaError } from "./formula-error.js";

export interface Token {
  readonly kind: "number" | "text" | "name" | "unit" | "symbol" | "end";
  readonly text: string;
  readonly at: number;
}

/** What a token begins with tells its kind; the groups of `pattern` stand in this order. */
const kinds = ["number", "text", "name", "unit", "symbol"] as const;
const pattern =
  /((?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?)|("(?:[^"]|"")*")|([A-Za-z_][A-Za-z0-9_]*(?:\.[A-Za-z0-9_]+)*)|(\[[^\]]*\])|(<>|<=|>=|\.\.|[-+*/^&=<>%(),])/y;
const space = /\s*/y;

/** Splits a formula into tokens. Throws FormulaError at the first character that has no place in one. */
export function tokensOf(formula: string): Token[] {
  const tokens: Token[] = [];
  let at = afterSpace(formula, 0);
  while (at < formula.length) {
    pattern.lastIndex = at;
    const match = pattern.exec(formula);
    if (match === null) throw new FormulaError(formula, at, meaningless(formula[at] as string));
    const kind = kinds.find((_, i) => match[i + 1] !== undefined) as Token["kind"];
    tokens.push({ kind, text: match[0], at });
    at = afterSpace(formula, pattern.lastIndex);
  }
  tokens.push({ kind: "end", text: "", at: formula.length });
  return tokens;
}

function afterSpace(formula: string, at: number): number {
  space.lastIndex = at;
  space.test(formula);
  return space.lastIndex;
}

function meaningless(character: string): string {
  if (character === '"') return "a text has no closing quote";
  if (character === "[") return "a unit has no closing bracket";
  return `"${character}" has no meaning in a formula`;
}
