import { FormulaError } from "./formula-error.js";
import { type Token, tokensOf } from "./tokens.js";
import { binding, frozen, type Operator, percentBinding, signBinding, type Tree } from "./tree.js";

/** Deeper nesting than this is refused: spreadsheets allow 64 levels. */
const deepest = 60;

const isOperator = (text: string): text is Operator => Object.hasOwn(binding, text);

/**
 * Reads a formula (no leading `=`) into a tree.
 *
 * The grammar is the arithmetic, comparison and function-call part of spreadsheet
 * formulas, with names; a number may carry a unit, as in `6[in]`, and `day_1..day_8`
 * stands for the eight arguments of a call that it counts through.
 * Throws FormulaError with the place and the reason.
 */
export function parse(formula: string): Tree {
  return frozen(new Parser(formula).whole());
}

class Parser {
  private readonly tokens: Token[];
  private next = 0;
  private depth = 0;

  constructor(private readonly formula: string) {
    this.tokens = tokensOf(formula);
  }

  whole(): Tree {
    const tree = this.expression(0);
    if (this.peek().kind !== "end") this.fail(`"${this.peek().text}" was not expected here`);
    return tree;
  }

  private peek(): Token {
    return this.tokens[this.next] as Token;
  }

  private take(): Token {
    const token = this.peek();
    this.next += 1;
    return token;
  }

  private fail(reason: string, token: Token = this.peek()): never {
    throw new FormulaError(this.formula, token.at, reason);
  }

  private expect(symbol: string): void {
    const token = this.peek();
    if (token.kind !== "symbol" || token.text !== symbol) {
      const found = token.kind === "end" ? "the formula ends" : `"${token.text}" stands there`;
      this.fail(`"${symbol}" is missing: ${found}`);
    }
    this.next += 1;
  }

  private at(symbol: string): boolean {
    return this.peek().kind === "symbol" && this.peek().text === symbol;
  }

  private expression(least: number): Tree {
    this.depth += 1;
    if (this.depth > deepest) this.fail(`nested deeper than ${deepest} levels`);
    let left = this.operand();
    for (;;) {
      const token = this.peek();
      if (token.kind !== "symbol") break;
      if (token.text === "%" && percentBinding > least) {
        this.take();
        left = { kind: "percent", of: left };
        continue;
      }
      if (!isOperator(token.text) || binding[token.text] <= least) break;
      this.take();
      const right = this.expression(binding[token.text]);
      left = { kind: "binary", operator: token.text, left, right };
    }
    this.depth -= 1;
    return left;
  }

  private operand(): Tree {
    const token = this.take();
    if (token.kind === "number") return this.number(token);
    if (token.kind === "text") {
      return { kind: "text", value: token.text.slice(1, -1).replaceAll('""', '"') };
    }
    if (token.kind === "name") return this.named(token);
    if (token.text === "-") return { kind: "negate", of: this.expression(signBinding) };
    if (token.text === "+") return this.expression(signBinding);
    if (token.text === "(") {
      const inner = this.expression(0);
      this.expect(")");
      return inner;
    }
    const found = token.kind === "end" ? "the formula ends" : `"${token.text}" stands there`;
    return this.fail(`a value is missing: ${found}`, token);
  }

  private number(token: Token): Tree {
    const value = Number(token.text);
    if (!Number.isFinite(value)) this.fail(`"${token.text}" is too large`, token);
    if (this.peek().kind !== "unit") return { kind: "number", value };
    return { kind: "number", value, unit: this.take().text.slice(1, -1) };
  }

  private named(token: Token): Tree {
    if (this.at("(")) return this.call(token);
    const upper = token.text.toUpperCase();
    if (upper === "TRUE" || upper === "FALSE") return { kind: "boolean", value: upper === "TRUE" };
    return { kind: "name", name: token.text };
  }

  private call(token: Token): Tree {
    this.expect("(");
    const args: Tree[] = [];
    if (!this.at(")")) {
      args.push(...this.argument());
      while (this.at(",")) {
        this.take();
        args.push(...this.argument());
      }
    }
    this.expect(")");
    return { kind: "call", name: token.text.toUpperCase(), args };
  }

  /** One argument, or those that a name counted through to another one stands for. */
  private argument(): readonly Tree[] {
    const first = this.expression(0);
    if (!this.at("..")) return [first];
    const dots = this.take();
    const last = this.expression(0);
    const [from, to] = [first, last].map((tree) =>
      tree.kind === "name" ? counted(tree.name) : undefined,
    );
    if (
      from === undefined ||
      to === undefined ||
      from.stem !== to.stem ||
      from.number >= to.number
    ) {
      this.fail('".." stands between two names that count up, such as day_1..day_8', dots);
    }
    const names = Array.from(
      { length: to.number - from.number + 1 },
      (_, i) => `${from.stem}${from.number + i}`,
    );
    return names.map((name) => ({ kind: "name", name }));
  }
}

/** `day_` and 3 of `day_3`. */
function counted(name: string): { stem: string; number: number } | undefined {
  const [, stem, digits] = /^(.*_)(0|[1-9]\d{0,2})$/.exec(name) ?? [];
  return stem === undefined ? undefined : { stem, number: Number(digits) };
}
