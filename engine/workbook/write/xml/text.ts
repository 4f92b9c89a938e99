/** What opens every part. */
export const head = `<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n`;

const marks: Readonly<Record<string, string>> = {
  "&": "&amp;",
  "<": "&lt;",
  ">": "&gt;",
};

/** What cannot stand in a text: marks of XML, and what XML 1.0 has no way to write (section 2.2), which is left out. */
const inText =
  // biome-ignore lint/suspicious/noControlCharactersInRegex: these are what is looked for
  /[&<>\x00-\x08\x0b\x0c\x0e-\x1f\x7f\ufffe\uffff]/;
const allInText = new RegExp(inText, "g");

/** Text for the inside of an element. */
export const content = (text: string): string =>
  inText.test(text) ? text.replaceAll(allInText, (one) => marks[one] ?? "") : text;

/** Text for the inside of an attribute, which stands in double quotes. */
export const attribute = (text: string): string => content(text).replaceAll('"', "&quot;");

const escapeLike = /_(?=x[0-9A-Fa-f]{4}_)/g;

/**
 * The inside of an element of the type ST_Xstring, in which "_x000D_" stands for a carriage return (ISO/IEC 29500-1,
 * 22.9.2.19). Where people typed just these letters, the underscore before them is written as its own escape.
 */
export function cellText(text: string): string {
  const safe = content(text);
  return safe.includes("_x") ? safe.replaceAll(escapeLike, "_x005F_") : safe;
}
