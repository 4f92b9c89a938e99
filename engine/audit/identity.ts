import { templateMark } from "../template/mark.js";
import type { Model } from "../template/model.js";
import { modelOf } from "../template/models.js";
import type { Template } from "../template/template.js";
import { unitSystems } from "../units/quantity.js";
import { identityProperties, type WorkbookIdentity } from "../workbook/match/identity.js";
import type { Finding } from "./finding.js";

/** The model a workbook was made with, or why that cannot be told. */
export function modelFor(
  identity: WorkbookIdentity,
  templates: readonly Template[],
): Model | Finding {
  const { template, version, units, templateFile } = identity;
  const named = templates.filter(({ name }) => name === template);
  if (template === undefined || named.length === 0) {
    return unknown(
      template === undefined ? "the workbook names no template" : `the template "${template}"`,
      `one of: ${[...new Set(templates.map(({ name }) => name))].join(", ")}`,
      templateFile,
    );
  }
  const found = named.find((one) => one.version === version);
  if (found === undefined) {
    const versions = named.map((one) => one.version).join(", ");
    return unknown(
      version === undefined ? "no version is named" : `version ${version} of ${template}`,
      `version ${versions}, which this program has`,
      templateFile,
    );
  }
  const system = unitSystems.find((one) => one === units);
  if (system === undefined) return unknown(`the units "${units ?? ""}"`, '"us" or "si"');
  return modelOf(found, system);
}

function unknown(found: string, expected: string, file?: string): Finding {
  return {
    grade: "wrong",
    code: "template",
    where: "custom properties",
    found,
    expected,
    advice:
      file === undefined
        ? "Nothing else can be checked. Write the bid again from the job record, or use a program that has the template."
        : `Nothing else can be checked. It is a template of an office's own, from the file ${file}: give that by --template.`,
  };
}

/** Is a template of an office's own still what it was when the workbook was written? */
export function checkTemplate(identity: WorkbookIdentity, { template }: Model): Finding[] {
  const { templateMark: mark, templateFile } = identity;
  if (mark === undefined || mark === templateMark(template)) return [];
  return [
    {
      grade: "wrong",
      code: "template",
      where: "custom properties",
      found: `${template.name} ${template.version} of the file ${templateFile} as it was when the bid was written, mark ${mark.slice(0, 12)}`,
      expected: `the one given, mark ${templateMark(template).slice(0, 12)}`,
      advice: `Give the file as it was then by --template. A change of figures is a new version: the old one stays beside it.`,
    },
  ];
}

/** Properties that every workbook carries. The trail's are looked at with the trail. */
export function checkProperties(identity: WorkbookIdentity): Finding[] {
  return (["job", "book", "bookAsOf", "bookMark"] as const).flatMap((key): Finding[] =>
    identity[key] === undefined
      ? [
          {
            grade: "wrong",
            code: "property",
            where: "custom properties",
            found: `the property "${identityProperties[key]}" is missing`,
            expected: "all the properties that the workbook was written with",
            advice: "Write the bid again from the job record.",
          },
        ]
      : [],
  );
}
