import { FormulaError } from "./formula-error.js";

export interface Token {
  readonly kind: "number" | "text" | "name" | "unit" | "symbol" | "end";
  readonly text: string;
  readonly at: number;
}

const pattern =
  /\s*(?:(?<number>(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?)|(?<text>"(?:[^"]|"")*")|(?<name>[A-Za-z_][A-Za-z0-9_]*(?:\.[A-Za-z0-9_]+)*)|(?<unit>\[[^\]]*\])|(?<symbol><>|<=|>=|\.\.|[-+*/^&=<>%(),]))/y;

/** Splits a formula into tokens. Throws FormulaError at the first character that has no place in one. */
export function tokensOf(formula: string): Token[] {
  const tokens: Token[] = [];
  let at = 0;
  while (formula.slice(at).trim() !== "") {
    pattern.lastIndex = at;
    const match = pattern.exec(formula);
    if (match?.groups === undefined) {
      const gap = formula.slice(at).length - formula.slice(at).trimStart().length;
      throw new FormulaError(formula, at + gap, meaningless(formula[at + gap] as string));
    }
    const [kind, text] = Object.entries(match.groups).find(([, found]) => found !== undefined) as [
      Token["kind"],
      string,
    ];
    at = pattern.lastIndex;
    tokens.push({ kind, text, at: at - text.length });
  }
  tokens.push({ kind: "end", text: "", at: formula.length });
  return tokens;
}

function meaningless(character: string): string {
  if (character === '"') return "a text has no closing quote";
  if (character === "[") return "a unit has no closing bracket";
  return `"${character}" has no meaning in a formula`;
}
