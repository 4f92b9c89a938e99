/** A random whole number below n. */
export type Below = (n: number) => number;

export const among = <T>(below: Below, list: readonly T[]): T => list[below(list.length)] as T;

/** What stands in odd places of files: numbers at their ends, escapes, pieces of markup. */
const strange = [
  ...["", "0", "-1", "-0", "1e308", "1E400", "NaN", "99999999999999999999", "0.1", "1e-320"],
  ...["null", "true", "[]", "{}", '"', "'", "\\", "\\u0000", "\\ud800", "\\u202e", "__proto__"],
  ...["#REF!", "TRUE", "_x0000_", "_x000D_", "_x005F_", "&#0;", "&amp;", "]]>", "<", "/>", "<!--"],
  ...["A1:XFD1048576", "SUM(", "((((", "IF(1,2,3)", "Site!A1", "runs.run", "fence", "2026-02-30"],
  ...[
    "\u0000",
    "\ud800",
    "\u202e",
    "\u{1f9f1}",
    "\r\n",
    "\u000b",
    " ",
    "=",
    "+",
    "@",
    "a".repeat(300),
  ],
];

/** Values and formulas more often than markup, whose loss only makes a file that is refused. */
const bits: readonly RegExp[] = [
  /(?<=<(?:v|t)>)[^<]*/g,
  /(?<=<(?:v|t)>)[^<]*/g,
  /(?<=<f>)[^<]*/g,
  /(?<=<f>)[^<]*/g,
  /(?<=<(?:v|t)>)[^<]*/g,
  /(?<=<f>)[^<]*/g,
  /<c [^>]*?(?:\/>|>.*?<\/c>)/g,
  /<row .*?<\/row>/g,
  /(?<=[A-Za-z]=")[^"]*/g,
  /(?<=")[^"\\]*(?=")/g,
  /[A-Za-z0-9.]+/g,
  /[^A-Za-z0-9\s]/g,
];

/** A text with one to three pieces of it replaced, swapped, doubled or taken out. */
export function mutatedText(text: string, below: Below): string {
  let made = text;
  for (let edits = 1 + below(3); edits > 0; edits--) {
    const found = [...made.matchAll(among(below, bits))];
    if (found.length === 0) continue;
    const one = found[below(found.length)] as RegExpMatchArray;
    const other = found[below(found.length)] as RegExpMatchArray;
    const put = among(below, [
      among(below, strange),
      among(below, strange),
      other[0],
      one[0] + one[0],
      "",
    ]);
    const at = one.index as number;
    made = made.slice(0, at) + put + made.slice(at + one[0].length);
  }
  return made;
}

/** Bytes cut off or with one to three bits turned. */
export function mutatedBytes(bytes: Uint8Array, below: Below): Uint8Array {
  const made = bytes.slice(0, below(6) === 0 ? below(bytes.length) : bytes.length);
  for (let flips = 1 + below(3); flips > 0 && made.length > 0; flips--) {
    const at = below(made.length);
    made[at] = (made[at] as number) ^ (1 << below(8));
  }
  return made;
}
