import type { Finding } from "../audit/index.js";
import { placeAndName } from "../audit/report.js";
import { short } from "../audit/subject.js";

/**
 * What nobody did to the workbook: a check of the bid that fails, which the bid says itself, and results that were not
 * calculated again, which both paper and a record do without.
 */
const ofTheBid: ReadonlySet<Finding["code"]> = new Set(["check-failed", "value-stale"]);

/** The findings of a grade that tell of something done to the workbook. */
export const doneToIt = (findings: readonly Finding[], grade: Finding["grade"]): Finding[] =>
  findings.filter((one) => one.grade === grade && !ofTheBid.has(one.code));

/** One line for all findings of a grade, so that nothing changed by hand passes without a word; none without findings. */
export function notAsWritten(file: string, findings: readonly Finding[], grade: string): string {
  const { length } = findings;
  if (length === 0) return "";
  return `This workbook is not as rillbook wrote it: ${length} ${grade} (the first: ${firstOf(findings)}). Run rillbook audit ${file}\n`;
}

/** What the audit finds wrong besides what was told already. */
export const wrongBesides = (file: string, findings: readonly Finding[]): string =>
  `${findings.length} more that the audit finds wrong (the first: ${firstOf(findings)}). Run rillbook audit ${file}\n`;

const longest = 200;

const firstOf = ([first]: readonly Finding[]): string =>
  first === undefined ? "" : short(`${placeAndName(first)}: ${first.found}`, longest);
