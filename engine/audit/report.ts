import type { Audit } from "./audit.js";
import { type Finding, grades } from "./finding.js";
import { headlineLines } from "./headline.js";
import { sectionsOfFindings } from "./order.js";

/** One line: `2 wrong, 1 doubtful, 3 to know`. */
export function countsOf({ findings }: Audit): string {
  return grades
    .map((grade) => `${findings.filter((one) => one.grade === grade).length} ${grade}`)
    .join(", ");
}

/** The findings for a terminal, under the same headings and in the same order as in a report. */
export function auditText(audit: Audit): string {
  const told = (one: Finding): string[] => [
    `${one.grade.toUpperCase()}  ${placeAndName(one)}`,
    `    found:    ${one.found}`,
    `    expected: ${one.expected}`,
    `    to do:    ${one.advice}`,
  ];
  const lines = sectionsOfFindings(audit.findings).flatMap(({ title, findings }) => [
    "",
    title,
    ...originsLine(findings.filter(isOrigin)),
    ...findings.filter((one) => !isOrigin(one)).flatMap(told),
  ]);
  return `${[`${countsOf(audit)}.`, ...linesOf(audit), ...lines].join("\n")}\n`;
}

/** What inputs stand on fills a report, and says nothing of what was changed. */
const isOrigin = ({ grade, code }: Finding): boolean =>
  grade === "to know" && (code === "input-untold" || code === "input-assumed");

/** `TO KNOW  inputs: 98 given in the first record, 507 at the template's defaults: all in --report`. */
function originsLine(findings: readonly Finding[]): string[] {
  if (findings.length === 0) return [];
  const told = findings.map(({ code, found, names = [] }) => {
    const what =
      code === "input-untold"
        ? "given in the first record"
        : found.endsWith("an assumption")
          ? "assumed"
          : "at the template's defaults";
    return `${Math.max(names.length, 1)} ${what}`;
  });
  return [`TO KNOW  inputs: ${told.join(", ")}: all in --report audit.md`];
}

/** In a report what inputs stand on is told of each. */
const placesOf = (one: Finding): string =>
  isOrigin(one) && one.names !== undefined ? one.names.join(", ") : placeAndName(one);

/** `Sheet!B91 (its_name)`; the place alone where it names the cell. */
export const placeAndName = ({ where, name }: Finding): string =>
  name === undefined || where.includes(name) ? where : `${where} (${name})`;

const linesOf = ({ model, headline, changes }: Audit): string[] =>
  model === undefined ? [] : headlineLines(model, headline, changes);

/** An audit as a Markdown document that can be filed. */
export function auditMarkdown(audit: Audit, file: string): string {
  const { identity } = audit;
  const origin = [
    ["Workbook", file],
    ["Job", identity.job],
    ["Template", `${identity.template}, version ${identity.version}, ${identity.units}`],
    ["Office book", `${identity.book}, as of ${identity.bookAsOf}, mark ${identity.bookMark}`],
    ["Trail ends with", identity.trailHead],
  ].map(([label, text]) => `- ${label}: ${escaped(text ?? "(not named)")}`);
  const section = (title: string, found: readonly Finding[]) => {
    const rows = found.map((one) => {
      const cells = [placesOf(one), one.found, one.expected, one.advice];
      return `| ${cells.map(escaped).join(" | ")} |`;
    });
    return [
      `## ${title}`,
      ["| Where | Found | Expected | To do |", "| --- | --- | --- | --- |", ...rows].join("\n"),
    ];
  };
  const parts = sectionsOfFindings(audit.findings).flatMap(({ title, findings }) =>
    section(title, findings),
  );
  const headline = linesOf(audit).map((line) => `- ${escaped(line)}`);
  return `${[
    "# Audit of a bid",
    origin.join("\n"),
    `Result: ${audit.clean ? "clean" : "not clean"} (${countsOf(audit)}).`,
    ...(headline.length === 0 ? [] : [headline.join("\n")]),
    ...parts,
  ].join("\n\n")}\n`;
}

/** Text from a workbook must not become markup, or break a row of a table. */
const escaped = (text: string): string =>
  text.replace(/[\\`*_<>[\]|#~]/g, "\\$&").replace(/[\r\n]+/g, " ");
