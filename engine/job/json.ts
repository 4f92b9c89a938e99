import { RillbookError } from "../errors.js";

/** A zero below zero, outside of dates and texts as far as can be seen without reading it all. */
const minusZero = /[:[,\s]-0(?:\.0*)?(?:[eE][-+]?\d+)?\s*[,\]}]/;

/** No cell holds a zero below zero, and it is written as 0 again: it is taken as that. */
const plainZero = (_: string, value: unknown) => (value === 0 ? 0 : value);

/** Parses the JSON of a file. Throws RillbookError with line, column and what is wrong there. */
export function parsedJson(text: string, file: string): unknown {
  try {
    return minusZero.test(text) ? JSON.parse(text, plainZero) : JSON.parse(text);
  } catch {
    const { at, what } = new Scan(text).fault();
    const before = text.slice(0, at).split("\n");
    const line = before.length;
    const column = (before.at(-1) as string).length + 1;
    throw new RillbookError(
      "json-broken",
      `${file} is not valid JSON: line ${line}, column ${column}: ${what}. Correct it there.`,
    );
  }
}

interface Fault {
  readonly at: number;
  readonly what: string;
}

class Broken extends Error {
  constructor(
    readonly at: number,
    what: string,
  ) {
    super(what);
  }
}

/** Deeper than any record; a deeper one is refused rather than followed. */
const mostDeep = 500;

/** Reads JSON (RFC 8259) only to find the first place where it is none. */
class Scan {
  private at = 0;

  constructor(private readonly text: string) {}

  fault(): Fault {
    try {
      this.value(0);
      this.blanks();
      if (this.at < this.text.length) this.broken(`${this.here()} stands after the end`);
    } catch (error) {
      if (error instanceof Broken) return { at: error.at, what: error.message };
      throw error;
    }
    return { at: this.at, what: "something is wrong here" };
  }

  private value(depth: number): void {
    this.blanks();
    if (depth > mostDeep) this.broken("lists and objects lie too deep within one another");
    const first = this.text[this.at];
    if (first === "{") this.members("}", "a comma or } is missing", () => this.member(depth));
    else if (first === "[")
      this.members("]", "a comma or ] is missing", () => this.value(depth + 1));
    else if (first === '"') this.string();
    else if (!this.take(/-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][-+]?\d+)?|true|false|null/y)) {
      this.broken(`a value is missing, and ${this.here()} is none`);
    }
  }

  private members(end: string, missing: string, one: () => void): void {
    this.at += 1;
    this.blanks();
    if (this.takes(end)) return;
    for (;;) {
      one();
      this.blanks();
      if (this.takes(end)) return;
      const comma = this.at;
      if (!this.takes(",")) this.broken(`${missing} before ${this.here()}`);
      this.blanks();
      if (this.text[this.at] === end) this.broken(`there is a comma too many before ${end}`, comma);
    }
  }

  private member(depth: number): void {
    this.blanks();
    if (this.text[this.at] !== '"') {
      this.broken(`a name in double quotes is missing, and ${this.here()} is none`);
    }
    this.string();
    this.blanks();
    if (!this.takes(":")) this.broken(`a colon is missing before ${this.here()}`);
    this.value(depth + 1);
  }

  private string(): void {
    const start = this.at;
    this.at += 1;
    // piece by piece, since a long text is too much for one expression
    while (this.take(/[^"\\\p{Cc}]{1,1000}|\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4})|[\u007f-\u009f]/uy));
    if (this.takes('"')) return;
    const found = this.text[this.at];
    if (found === "\\") this.broken('a backslash must stand before one of " \\ / b f n r t u');
    if (found === "\t") this.broken("a tab within a text is written \\t");
    this.broken("a text is not closed with a double quote on its line", start);
  }

  private take(pattern: RegExp): boolean {
    pattern.lastIndex = this.at;
    const [found] = pattern.exec(this.text) ?? [];
    this.at += found?.length ?? 0;
    return found !== undefined;
  }

  private takes(sign: string): boolean {
    if (this.text[this.at] !== sign) return false;
    this.at += 1;
    return true;
  }

  private blanks(): void {
    this.take(/[ \t\r\n]*/y);
  }

  /** For sentences: what stands here. */
  private here(): string {
    const found = /^(?:[\w.+-]{1,20}|[^\s])/u.exec(this.text.slice(this.at, this.at + 40))?.[0];
    return found === undefined ? "the end of the file" : found === '"' ? "a text" : found;
  }

  private broken(what: string, at = this.at): never {
    throw new Broken(at, what);
  }
}
