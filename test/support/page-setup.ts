import { strFromU8, unzipSync } from "fflate";

/** How a sheet of a written workbook is parted into pages. */
export interface PageSetup {
  readonly fits: boolean;
  /** Per cent. */
  readonly scale: number;
  /** The rows behind which a page ends. */
  readonly breaks: readonly number[];
  /** Points of each row from 1 on; 0 where it is hidden. */
  readonly heights: readonly number[];
}

/** Reads it from the parts of the workbook as the writer makes them. */
export function pageSetupOf(bytes: Uint8Array, sheet: string): PageSetup {
  const parts = unzipSync(bytes, {
    filter: ({ name }) => /^xl\/(workbook\.xml|worksheets\/sheet\d+\.xml)$/.test(name),
  });
  const text = (name: string) => strFromU8(parts[name] as Uint8Array);
  const names = [...text("xl/workbook.xml").matchAll(/<sheet [^>]*?name="([^"]*)"/g)];
  const at = names.findIndex(([, name]) => name === sheet) + 1;
  if (at === 0) throw new Error(`No sheet ${sheet}.`);
  const xml = text(`xl/worksheets/sheet${at}.xml`);
  const heights: number[] = [];
  for (const [tag, row] of xml.matchAll(/<row r="(\d+)"[^>]*>/g)) {
    const isHidden = / hidden="(1|true)"/.test(tag);
    heights[Number(row) - 1] = isHidden ? 0 : Number(/ ht="([\d.]+)"/.exec(tag)?.[1] ?? 13);
  }
  return {
    fits: /<pageSetUpPr[^>]*fitToPage="(1|true)"/.test(xml),
    scale: Number(/<pageSetup[^>]* scale="(\d+)"/.exec(xml)?.[1] ?? 100),
    breaks: [...xml.matchAll(/<brk id="(\d+)"/g)].map(([, id]) => Number(id)),
    heights: Array.from(heights, (height) => height ?? 13),
  };
}
