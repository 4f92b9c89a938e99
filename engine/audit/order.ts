import { type Finding, type Grade, isChangedInput } from "./finding.js";

/** Findings of a kind under their heading. */
export interface FindingSection {
  readonly title: string;
  readonly findings: readonly Finding[];
}

const titles: Readonly<Record<Grade, string>> = {
  wrong: "Wrong: a figure does not follow from the template and the inputs, or is read otherwise",
  doubtful: "Doubtful: it may be meant, and a person should look",
  "to know": "To know",
};
const changed =
  "Changed inputs: the trail tells nothing of them, and other findings may follow from them";

/** The findings under their headings, the gravest first; those of one kind in the order of the checks. */
export function sectionsOfFindings(findings: readonly Finding[]): FindingSection[] {
  const of = (grade: Grade): FindingSection => ({
    title: titles[grade],
    findings: findings.filter((one) => one.grade === grade && !isChangedInput(one)),
  });
  const inputs = { title: changed, findings: findings.filter(isChangedInput) };
  const all = [of("wrong"), inputs, of("doubtful"), of("to know")];
  return all.filter((one) => one.findings.length > 0);
}

/** The findings in the order in which they are told. */
export const inOrder = (findings: readonly Finding[]): Finding[] =>
  sectionsOfFindings(findings).flatMap((one) => one.findings);
