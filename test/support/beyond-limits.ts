import { strFromU8, unzipSync } from "fflate";
import { limits } from "../../engine/limits.js";

const unescaped = (text: string) =>
  text
    .replaceAll("&lt;", "<")
    .replaceAll("&gt;", ">")
    .replaceAll("&quot;", '"')
    .replaceAll("&apos;", "'")
    .replaceAll(/&#(\d+);/g, (_, code) => String.fromCodePoint(Number(code)))
    .replaceAll("&amp;", "&");

/** How deep functions stand in one another, and the most arguments that one has; brackets count as functions. */
function callsIn(formula: string): { depth: number; most: number } {
  const bare = formula.replaceAll(/"(?:[^"]|"")*"|'[^']*'/g, "x");
  const open: number[] = [];
  let [depth, most] = [0, 0];
  for (const character of bare) {
    if (character === "(") depth = Math.max(depth, open.push(1));
    else if (character === ")") most = Math.max(most, open.pop() ?? 0);
    else if (character === "," && open.length > 0) open.push((open.pop() as number) + 1);
  }
  return { depth, most };
}

/** What of a written workbook is beyond the limits of the format. */
export function beyondLimits(file: Uint8Array): string[] {
  const found: string[] = [];
  const over = (what: string, length: number, most: number, where: string) => {
    if (length > most) found.push(`${where}: ${what} ${length}, over ${most}`);
  };
  for (const [name, bytes] of Object.entries(unzipSync(file))) {
    if (!name.endsWith(".xml")) continue;
    const xml = strFromU8(bytes);
    const all = (pattern: RegExp) =>
      [...xml.matchAll(pattern)].map(([, text = ""]) => unescaped(text));
    for (const formula of all(
      /<(?:f|formula|formula1|formula2|definedName)(?: [^>]*)?>([^<]*)</g,
    )) {
      over("a formula of", formula.length, limits.formula, name);
      const texts = formula.match(/"(?:[^"]|"")*"/g) ?? [];
      for (const text of texts)
        over(
          "a text of",
          text.slice(1, -1).replaceAll('""', '"').length,
          limits.literal,
          `${name} ${text}`,
        );
      const { depth, most } = callsIn(formula);
      over("functions deep", depth, limits.nesting, name);
      over("arguments", most, limits.arguments, name);
    }
    for (const text of all(/<(?:t|v)(?: [^>]*)?>([^<]*)</g)) {
      over("a cell text of", text.length, limits.cellText, name);
      over("line feeds", text.split("\n").length - 1, limits.lineFeeds, name);
    }
    const attribute = (key: string) =>
      all(new RegExp(`<dataValidation[^>]* ${key}="([^"]*)"`, "g"));
    for (const text of attribute("prompt"))
      over("a prompt of", text.length, limits.validationPrompt, name);
    for (const text of attribute("error"))
      over("a message of", text.length, limits.validationError, name);
    for (const key of ["promptTitle", "errorTitle"]) {
      for (const text of attribute(key)) over(key, text.length, limits.validationTitle, name);
    }
    for (const text of all(/<odd(?:Footer|Header)>([^<]*)</g))
      over("a footer of", text.length, limits.footer, name);
    for (const text of all(/<sheet [^>]*name="([^"]*)"/g))
      over("a sheet name of", text.length, limits.sheetName, name);
    for (const text of all(/<definedName [^>]*name="([^"]*)"/g))
      over("a name of", text.length, limits.name, name);
  }
  return found;
}
