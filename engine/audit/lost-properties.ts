import type { Finding } from "./finding.js";

export const lostProperties: Finding = {
  grade: "doubtful",
  code: "property",
  where: "custom properties",
  found:
    "all custom properties are gone: openpyxl, exceljs and other libraries drop them by saving",
  expected: "the properties as written, with the marks of inputs, prices and trail",
  advice:
    "The rest was checked by what the first sheet says; without the marks nobody can tell whether lists and trail are whole. Bring it into its job record with rillbook take -o; without a record, make one with rillbook take --template. Then write the bid again.",
};

/** What can only be told by a property. */
export const needsProperty = ({ found }: Finding): boolean =>
  found.startsWith("The custom property");
