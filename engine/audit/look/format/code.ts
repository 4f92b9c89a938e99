/**
 * What a number format does, with its spelling left out: `"$"#,##0` and `\$#,##0` print alike, and so do a
 * format with and without colours and room left for signs. White, which hides, is kept.
 */
export function printedForm(code: string, isText: boolean): string {
  if (isText) {
    const own = textPart(code);
    return own === undefined || own === "@" ? "as it is" : own;
  }
  return numberParts(code).join(";");
}

/** The part of a code that shows texts; undefined where they are shown as they are. */
export function textPart(code: string): string | undefined {
  const parts = sections(code);
  return parts[3] ?? (isOfTexts(parts.at(-1)) ? parts.at(-1) : undefined);
}

/** The parts of a code that show numbers: a fourth, and a last one with the sign of a text, are for texts alone. */
export function numberParts(code: string): readonly string[] {
  const parts = sections(code);
  const last = parts.length > 1 && isOfTexts(parts.at(-1)) ? parts.length - 1 : 3;
  return parts.slice(0, Math.min(last, 3));
}

const isOfTexts = (part = ""): boolean => part.replace(/\\./gs, "").includes("@");

/** Does a format show nothing of a number (or of a text)? */
export const showsNothing = (code: string, isText: boolean): boolean =>
  /^(|;|;;)$/.test(isText ? `x${printedForm(code, true)}`.slice(1) : printedForm(code, false));

const literal = /[$\-+/():!^&'~{}<>=\s]/;
const kept = /^\[(white|[<>=].*|h+|m+|s+|dbnum\d)\]$/i;
/** The second of the numbered colours is white. */
const white = /^\[color ?2\]$/i;

/** The last formats looked at: a workbook has few, and thousands of cells with each. */
const known = new Map<string, readonly string[]>();
const mostKnown = 500;

function sections(code: string): readonly string[] {
  const before = known.get(code);
  if (before !== undefined) return before;
  const parts = partsOf(code);
  // a hostile file may have any number of them
  if (known.size >= mostKnown) known.clear();
  known.set(code, parts);
  return parts;
}

/** The parts of a code between semicolons, each in one spelling. */
function partsOf(whole: string): string[] {
  const code = whole.slice(0, 1000);
  const parts = [""];
  const add = (piece: string) => {
    parts[parts.length - 1] += piece;
  };
  const say = (text: string) => add([...text].map((one) => `\\${one}`).join(""));
  // a comma parts thousands, or scales, only where there is a digit to do it to
  const ofDigits = /[0#?]/.test(code.replaceAll(/"[^"]*"|\\./gs, ""));
  for (const [token] of code.matchAll(/"[^"]*"|\\.|_.|\*.|\[[^\]]*\]|./gsu)) {
    const first = token[0] as string;
    if (token === ";") parts.push("");
    else if (first === '"' && token.length > 1) say(token.slice(1, -1));
    else if (first === "\\") say(token.slice(1));
    else if (first === "*" && /\d/.test(token)) say(token.slice(1).repeat(2));
    else if ((first === "_" || first === "*") && token.length > 1) continue;
    else if (first === "[" && token.startsWith("[$")) say(token.slice(2, -1).replace(/-.*/, ""));
    else if (white.test(token)) add("[white]");
    else if (first === "[") add(kept.test(token) ? token.toLowerCase() : "");
    else if (literal.test(token) || (token === "," && !ofDigits)) say(token);
    else add(token.toLowerCase());
  }
  return parts.map((part) => (part === "general" ? "general" : part));
}
