import { RillbookError } from "../../errors.js";
import type { TrailEntry } from "./entry.js";

/** The most that a workbook carries beside a large bid, so that it stays within what is read of one. */
export const longestTrail = { entries: 3000, characters: 1_500_000 } as const;

/** Throws RillbookError for a trail that no workbook could carry and be read again. */
export function mustFitWorkbook(trail: readonly TrailEntry[], file: string): void {
  const { entries, characters } = longestTrail;
  const written = () => trail.reduce((sum, one) => sum + JSON.stringify(one).length, 0);
  if (trail.length <= entries && written() <= characters) return;
  const isWorkbook = /\.xls[xm]$/i.test(file);
  const record = isWorkbook ? file.replace(/\.xls[xm]$/i, ".json") : file;
  const first = isWorkbook ? `take it into a record (rillbook take ${file} -o ${record}), ` : "";
  const short = record.replace(/(\.json)?$/i, "-short.json");
  throw new RillbookError(
    "trail-too-long",
    `The trail of ${file} has ${trail.length} entries; a workbook carries at most ${entries}, with ${characters} characters in all. Keep this file; ${first}make a record that has the last entry of each input alone (rillbook shorten ${record} -o ${short}), and bid from that one.`,
  );
}
