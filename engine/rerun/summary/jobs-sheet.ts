import { someCodes } from "../lacking.js";
import { isFigure, type JobLine } from "../lines.js";
import type { Results } from "../results.js";
import { beforeOf, inTotals, newlyFailing } from "../running-totals.js";
import { type Content, dollars, type ExcelWriter, SheetWriter, share } from "./sheet-writer.js";

export const jobHeadings = [
  { label: "Job", width: 16 },
  { label: "File", width: 36 },
  { label: "Template", width: 12 },
  { label: "Made with version", width: 10 },
  { label: "Calculated by version", width: 10 },
  { label: "Kind of file", width: 10 },
  { label: "Price before", width: 14, format: dollars },
  { label: "Price now", width: 14, format: dollars },
  { label: "Change", width: 14, format: dollars },
  { label: "Change in %", width: 10, format: share },
  { label: "Cost before", width: 14, format: dollars },
  { label: "Cost now", width: 14, format: dollars },
  { label: "Margin before", width: 10, format: share },
  { label: "Margin now", width: 10, format: share },
  { label: "Margin drift", width: 10, format: share },
  { label: "Section that moved most", width: 22 },
  { label: "Checks newly failing", width: 10 },
  { label: "Checks failing", width: 10 },
  { label: "Quotes expired", width: 10 },
  { label: "In totals", width: 8 },
  { label: "Remark", width: 44 },
] as const;

/** One line for each job. `In totals` is 1 where old and new figures are known and no other file has the job. */
export async function writeJobs(book: ExcelWriter, results: Results): Promise<void> {
  const sheet = new SheetWriter(
    book,
    "Jobs",
    "Every job: what it was, what it is now.",
    jobHeadings,
  );
  for await (const { line, sameAs } of results.jobs()) sheet.add(row(sheet, line, sameAs));
  sheet.end();
}

function row(sheet: SheetWriter, line: JobLine, sameAs: string | undefined): Content[] {
  const at = (label: (typeof jobHeadings)[number]["label"]) =>
    `${sheet.letters(label)}${sheet.next}`;
  const before = beforeOf(line);
  const { price, cost } = line.now;
  const [oldPrice, oldCost] = [before?.price ?? null, before?.cost ?? null];
  const change = numbers(oldPrice, price, (old, now) => now - old);
  const [oldMargin, margin] = [
    numbers(oldCost, oldPrice, marginOf),
    numbers(cost, price, marginOf),
  ];
  const guarded = (formula: string, result: number | undefined, ...cells: string[]): Content => ({
    formula: `IF(COUNT(${cells.join(",")})=${cells.length},${formula},"")`,
    result: result ?? "",
  });
  return [
    line.job,
    line.file,
    line.template,
    line.version,
    line.by,
    line.source,
    oldPrice,
    price,
    guarded(
      `${at("Price now")}-${at("Price before")}`,
      change,
      at("Price now"),
      at("Price before"),
    ),
    guarded(
      `IF(${at("Price before")}=0,0,${at("Change")}/${at("Price before")})`,
      numbers(change ?? null, oldPrice, (by, old) => (old === 0 ? 0 : by / old)),
      at("Change"),
      at("Price before"),
    ),
    oldCost,
    cost,
    marginContent(at("Cost before"), at("Price before"), oldMargin),
    marginContent(at("Cost now"), at("Price now"), margin),
    guarded(
      `${at("Margin now")}-${at("Margin before")}`,
      numbers(oldMargin ?? null, margin ?? null, (old, now) => now - old),
      at("Margin now"),
      at("Margin before"),
    ),
    movedMost(line),
    newlyFailing(line).length,
    line.fails.must + line.fails.look,
    line.expired.length,
    inTotals(line, sameAs),
    remark(line, sameAs),
  ];
}

function marginContent(cost: string, price: string, result: number | undefined): Content {
  const formula = `IF(COUNT(${cost},${price})=2,IF(${price}=0,0,1-${cost}/${price}),"")`;
  return { formula, result: result ?? "" };
}

const marginOf = (cost: number, price: number) => (price === 0 ? 0 : 1 - cost / price);

/** The result where both are numbers. */
function numbers(
  first: number | string | null,
  second: number | string | null,
  calculate: (first: number, second: number) => number,
): number | undefined {
  return typeof first === "number" && typeof second === "number"
    ? calculate(first, second)
    : undefined;
}

function movedMost(line: JobLine): string {
  const before = beforeOf(line);
  let [most, found] = [0, ""];
  for (const [label, now] of Object.entries(line.now.sections)) {
    const old = before?.sections[label];
    if (old === undefined || !isFigure(old) || !isFigure(now)) continue;
    if (Math.abs(now - old) <= most) continue;
    most = Math.abs(now - old);
    found = label;
  }
  return found;
}

const mostRoots = 3;

function told({ cells, roots }: NonNullable<JobLine["inError"]>): string {
  const shown = roots.slice(0, mostRoots).map(({ name, error }) => `${error} in ${name}`);
  const more = roots.length > mostRoots ? `, and ${roots.length - mostRoots} more` : "";
  return `${cells} cells in error, from ${shown.join(", ")}${more}`;
}

function remark(line: JobLine, sameAs: string | undefined): string {
  const remarks = [
    line.inError === undefined ? "" : `does not stand: ${told(line.inError)}`,
    "unknown" in line.before ? `price before not known: ${line.before.unknown}` : "",
    line.missing === undefined
      ? ""
      : `not in the new office book: ${someCodes(line.missing.codes)}`,
    sameAs === undefined ? "" : `same job number as ${sameAs}, which counts`,
    line.leftOut === undefined ? "" : `inputs left out: ${line.leftOut.join(", ")}`,
  ];
  return remarks.filter(Boolean).join("; ");
}
