import { Archive } from "../workbook/write/archive.js";

/** Cells that are empty in every workbook of ours: an area of them prints nothing. */
const nothing = "$XFA$1:$XFA$2";

/**
 * A copy of a workbook of which one sheet alone is in sight and prints. Hidden sheets print too where they
 * have an area that does, so that of the others lies where nothing is. Formulas, pictures and drawings
 * are as they were.
 */
export function onlySheet(workbook: Uint8Array, sheet: string): Uint8Array {
  const parts = new Archive(workbook);
  const path = "xl/workbook.xml";
  const xml = parts.text(path);
  const names: string[] = [];
  const sheets = xml.replace(/<sheet\s[^>]*>/g, (tag) => {
    const bare = tag.replace(/\s+state="[^"]*"/, "");
    const name = unescaped(/\sname="([^"]*)"/.exec(tag)?.[1] ?? "");
    names.push(name);
    return name === sheet ? bare : bare.replace("<sheet", '<sheet state="hidden"');
  });
  const shown = names.indexOf(sheet);
  const made = withAreas(sheets, names, shown)
    // the window opens on the sheet that is left
    .replace(/\s+(activeTab|firstSheet)="\d+"/g, "")
    .replace("<workbookView", `<workbookView activeTab="${shown}" firstSheet="${shown}"`);
  parts.put(path, made);
  return parts.packed();
}

/** The print areas of all sheets but one lie where nothing is. */
function withAreas(xml: string, names: readonly string[], shown: number): string {
  const isOthers = (tag: string) =>
    /\sname="_xlnm\.Print_Area"/.test(tag) && !new RegExp(`\\slocalSheetId="${shown}"`).test(tag);
  const left = xml.replace(/<definedName\s[^>]*>[^<]*<\/definedName>/g, (tag) =>
    isOthers(tag) ? "" : tag,
  );
  const areas = names.flatMap((name, i) => {
    if (i === shown) return [];
    const quoted = escaped(`'${name.replaceAll("'", "''")}'`);
    return [
      `<definedName name="_xlnm.Print_Area" localSheetId="${i}">${quoted}!${nothing}</definedName>`,
    ];
  });
  return left.includes("<definedNames>")
    ? left.replace("<definedNames>", `<definedNames>${areas.join("")}`)
    : left.replace("</sheets>", `</sheets><definedNames>${areas.join("")}</definedNames>`);
}

const named: Readonly<Record<string, string>> = {
  "&amp;": "&",
  "&lt;": "<",
  "&gt;": ">",
  "&quot;": '"',
  "&apos;": "'",
};
const unescaped = (text: string): string =>
  text.replace(/&(amp|lt|gt|quot|apos);/g, (one) => named[one] ?? one);
const escaped = (text: string): string =>
  text.replaceAll("&", "&amp;").replaceAll("<", "&lt;").replaceAll(">", "&gt;");
