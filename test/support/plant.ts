import { strFromU8, strToU8, unzipSync, zipSync } from "fflate";

/** A workbook in which every cached result of a formula is wrong, and how many there were. */
export function plantWrongValues(bytes: Uint8Array): { bytes: Uint8Array; planted: number } {
  const parts = unzipSync(bytes);
  let planted = 0;
  for (const [name, part] of Object.entries(parts)) {
    if (!/^xl\/worksheets\/sheet\d+\.xml$/.test(name)) continue;
    const xml = strFromU8(part).replace(
      /<c ([^>]*)>(<f>.*?<\/f>)<v>[^<]*<\/v><\/c>/g,
      (_, attributes: string, formula: string) => {
        planted += 1;
        return `<c ${attributes.replace(/ t="[^"]*"/, "")}>${formula}<v>-999</v></c>`;
      },
    );
    parts[name] = strToU8(xml);
  }
  return { bytes: zipSync(parts, { level: 0 }), planted };
}
