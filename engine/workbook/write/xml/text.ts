/** What opens every part. */
export const head = `<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n`;

const marks: Readonly<Record<string, string>> = {
  "&": "&amp;",
  "<": "&lt;",
  ">": "&gt;",
  '"': "&quot;",
  "'": "&apos;",
};

/** What cannot stand as it is: marks of XML, and what XML 1.0 has no way to write (section 2.2), which is left out. */
const special =
  // biome-ignore lint/suspicious/noControlCharactersInRegex: these are what is looked for
  /[&<>"'\x00-\x08\x0b\x0c\x0e-\x1f\x7f\ufffe\uffff]/;
const specials = new RegExp(special, "g");

/** Text for the inside of an attribute or an element. */
export const encoded = (text: string): string =>
  special.test(text) ? text.replaceAll(specials, (one) => marks[one] ?? "") : text;

const escapeLike = /_(?=x[0-9A-Fa-f]{4}_)/g;

/**
 * Text of the type ST_Xstring, in which "_x000D_" stands for a carriage return (ISO/IEC 29500-1, 22.9.2.19). Where
 * people typed just these letters, the underscore before them is written as its own escape.
 */
export function textEncoded(text: string): string {
  const safe = encoded(text);
  return safe.includes("_x") ? safe.replaceAll(escapeLike, "_x005F_") : safe;
}
