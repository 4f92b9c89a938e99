import { comparedBuilt, isWithin, notCompared, overOf } from "../built-totals.js";
import type { JobLine } from "../lines.js";
import type { Results } from "../results.js";
import { beforeOf } from "../running-totals.js";
import { type Content, dollars, type ExcelWriter, SheetWriter, share } from "./sheet-writer.js";

export const builtSheet = "Built";

export const builtHeadings = [
  { label: "Job", width: 24 },
  { label: "File", width: 36 },
  { label: "Compared", width: 10 },
  { label: "Price as bid", width: 14, format: dollars },
  { label: "Price now", width: 14, format: dollars },
  { label: "Cost as bid", width: 14, format: dollars },
  { label: "Cost now", width: 14, format: dollars },
  { label: "Cost it came to", width: 14, format: dollars },
  { label: "Over the bid", width: 14, format: dollars },
  { label: "Over the bid, %", width: 10, format: share },
  { label: "Over now", width: 14, format: dollars },
  { label: "Over now, %", width: 10, format: share },
  { label: "Off the bid, %", width: 10, format: share },
  { label: "Off now, %", width: 10, format: share },
  { label: "Contingency as bid", width: 14, format: dollars },
  { label: "Contingency now", width: 14, format: dollars },
  { label: "Contingency for P80 now", width: 14, format: dollars },
  { label: "Within the bid", width: 10 },
  { label: "Within now", width: 10 },
  { label: "Within P80 now", width: 10 },
  { label: "Not compared, since", width: 60 },
] as const;

type Label = (typeof builtHeadings)[number]["label"];

/** One line for each job that is told as built: its cost as bid and as it would be now, against what it came to. */
export async function writeBuilt(book: ExcelWriter, results: Results): Promise<void> {
  const sheet = new SheetWriter(
    book,
    builtSheet,
    "Jobs told as built. Cost is that of the work, without overhead, contingency and profit: as bid, under the new office book, and as it came. Within: 1 where it stayed within cost and contingency.",
    builtHeadings,
  );
  for await (const { line, sameAs } of results.jobs()) {
    if (line.built !== undefined) sheet.add(row(sheet, line, line.built, sameAs));
  }
  sheet.end();
}

function row(
  sheet: SheetWriter,
  line: JobLine,
  built: NonNullable<JobLine["built"]>,
  sameAs: string | undefined,
): Content[] {
  const at = (label: Label) => `${sheet.letters(label)}${sheet.next}`;
  const counts = sameAs === undefined ? comparedBuilt(built) : undefined;
  const sums = "unknown" in built ? undefined : built;
  /** A formula that shows nothing for a job that is not compared. */
  const only = (formula: string, result: number | undefined): Content => ({
    formula: `IF(${at("Compared")}=1,${formula},"")`,
    result: result ?? "",
  });
  const of = (calculate: (one: NonNullable<typeof counts>) => number) =>
    counts && calculate(counts);
  const over = (label: Label, key: "bid" | "now") =>
    [
      only(
        `${at("Cost it came to")}-${at(label)}`,
        of((one) => one.made - one[key]),
      ),
      only(
        `${at("Cost it came to")}/${at(label)}-1`,
        of((one) => overOf(one.made, one[key])),
      ),
    ] as const;
  const off = (label: Label, key: "bid" | "now") =>
    only(
      `ABS(${at(label)})`,
      of((one) => Math.abs(overOf(one.made, one[key]))),
    );
  const within = (cost: Label, kept: Label, limit: (one: NonNullable<typeof counts>) => number) =>
    only(
      `IF(${at("Cost it came to")}<=${at(cost)}+${at(kept)}+0.005,1,0)`,
      of((one) => (isWithin(one.made, limit(one)) ? 1 : 0)),
    );
  const covered = sums?.covered;
  return [
    line.job,
    line.file,
    counts === undefined ? 0 : 1,
    beforeOf(line)?.price ?? null,
    line.now.price,
    sums?.bid ?? null,
    sums?.now ?? null,
    sums?.made ?? null,
    ...over("Cost as bid", "bid"),
    ...over("Cost now", "now"),
    off("Over the bid, %", "bid"),
    off("Over now, %", "now"),
    sums?.kept ?? null,
    sums?.keptNow ?? null,
    covered ?? null,
    within("Cost as bid", "Contingency as bid", (one) => one.bid + one.kept),
    within("Cost now", "Contingency now", (one) => one.now + one.keptNow),
    covered === undefined
      ? null
      : within("Cost now", "Contingency for P80 now", (one) => one.now + (one.covered ?? 0)),
    notCompared(built) ??
      (sameAs === undefined ? "" : `same job number as ${sameAs}, which counts`),
  ];
}
