import { shown } from "../job/shown-value.js";
import type { Audit } from "./audit.js";
import { type Finding, type Grade, grades, isChangedInput } from "./finding.js";

/** One line: `2 wrong, 1 doubtful, 3 to know`. */
export function countsOf({ findings }: Audit): string {
  return grades
    .map((grade) => `${findings.filter((one) => one.grade === grade).length} ${grade}`)
    .join(", ");
}

/** The findings for a terminal. */
export function auditText(audit: Audit): string {
  const lines = audit.findings.flatMap((one) => [
    `${one.grade.toUpperCase()}  ${placeAndName(one)}`,
    `    found:    ${one.found}`,
    `    expected: ${one.expected}`,
    `    to do:    ${one.advice}`,
  ]);
  return `${[`${countsOf(audit)}.`, ...headlineLines(audit), ...lines].join("\n")}\n`;
}

const placeAndName = ({ where, name }: Finding): string =>
  name === undefined || where.includes(name) ? where : `${where} (${name})`;

/** The headline figures that are not what the template's formulas give from the same inputs. */
function headlineLines({ model, headline }: Audit): string[] {
  if (model === undefined) return [];
  return headline.flatMap(({ cell, shown: here, byTemplate }) => {
    const [now, then] = [shown(model, cell, here), shown(model, cell, byTemplate)];
    if (now === then) return [];
    return [`${cell.declaration.label}: the workbook shows ${now}; by the template it is ${then}.`];
  });
}

const titles: Readonly<Record<Grade, string>> = {
  wrong: "Wrong: a figure does not follow from the template and the inputs",
  doubtful: "Doubtful: it may be meant, and a person should look",
  "to know": "To know",
};

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
    if (found.length === 0) return [];
    const rows = found.map((one) => {
      const cells = [placeAndName(one), one.found, one.expected, one.advice];
      return `| ${cells.map(escaped).join(" | ")} |`;
    });
    return [
      `## ${title}`,
      ["| Where | Found | Expected | To do |", "| --- | --- | --- | --- |", ...rows].join("\n"),
    ];
  };
  const others = audit.findings.filter((one) => !isChangedInput(one));
  const parts = [
    ...section(
      "Changed inputs: what else is found may follow from them",
      audit.findings.filter(isChangedInput),
    ),
    ...grades.flatMap((grade) =>
      section(
        titles[grade],
        others.filter((one) => one.grade === grade),
      ),
    ),
  ];
  const headline = headlineLines(audit).map((line) => `- ${escaped(line)}`);
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
