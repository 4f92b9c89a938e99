import { strFromU8, strToU8, unzipSync, zipSync } from "fflate";

/** The same for every copy, so that equal workbooks give equal copies. */
const fixedTime = new Date(Date.UTC(2000, 0, 1));

/**
 * A copy of a workbook in which one sheet alone is in sight, so that a program prints that sheet and no
 * other. Its formulas, pictures and drawings are as they were.
 */
export function onlySheet(workbook: Uint8Array, sheet: string): Uint8Array {
  const parts = unzipSync(workbook);
  const path = "xl/workbook.xml";
  const xml = strFromU8(parts[path] as Uint8Array);
  let shown = 0;
  let at = -1;
  const sheets = xml.replace(/<sheet\s[^>]*>/g, (tag) => {
    at += 1;
    const bare = tag.replace(/\s+state="[^"]*"/, "");
    if (unescaped(/\sname="([^"]*)"/.exec(tag)?.[1] ?? "") !== sheet) {
      return bare.replace("<sheet", '<sheet state="hidden"');
    }
    shown = at;
    return bare;
  });
  // the window opens on the sheet that is left
  const made = sheets
    .replace(/\s+(activeTab|firstSheet)="\d+"/g, "")
    .replace("<workbookView", `<workbookView activeTab="${shown}" firstSheet="${shown}"`);
  return zipSync({ ...parts, [path]: strToU8(made) }, { mtime: fixedTime, level: 1 });
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
