import type { DataValidation } from "exceljs";
import { limits } from "../../limits.js";
import type { InputDeclaration } from "../../template/declare.js";
import { inSystem, ruleInWords } from "../../template/implied.js";
import type { UnitSystem } from "../../units/quantity.js";

/** Longer texts make a file that needs repair; label and note stand in full beside the cell. */
const clipped = (text: string, most: number): string =>
  text.length <= most ? text : `${text.slice(0, most - 1)}…`;

/** The rule that a spreadsheet applies to what is typed into an input, with a useful message. */
export function validationOf(
  declaration: InputDeclaration,
  system: UnitSystem,
): DataValidation | undefined {
  const { quantity, label, note, choices } = declaration;
  const rule =
    choices !== undefined
      ? "Choose from the list."
      : quantity.kind === "text"
        ? ""
        : quantity.kind === "yesno"
          ? "TRUE or FALSE."
          : `${ruleInWords(declaration, system)}.`;
  const prompt = [note, rule].filter(Boolean).join(" ");
  const said = {
    allowBlank: true,
    showErrorMessage: true,
    errorStyle: "stop",
    errorTitle: clipped(label, limits.validationTitle),
    error: clipped(`This value does not fit. Rule: ${rule}`, limits.validationError),
    ...(prompt === ""
      ? {}
      : {
          showInputMessage: true,
          promptTitle: clipped(label, limits.validationTitle),
          prompt: clipped(prompt, limits.validationPrompt),
        }),
  } as const;
  if (choices !== undefined) {
    const list = typeof choices === "string" ? choices : `"${choices.join(",")}"`;
    return { type: "list", formulae: [list], ...said };
  }
  if (quantity.kind === "yesno") return { type: "list", formulae: ['"TRUE,FALSE"'], ...said };
  if (quantity.kind === "text") return undefined;
  const least =
    declaration.least === undefined ? -1e12 : inSystem(declaration.least, declaration, system);
  const most =
    declaration.most === undefined ? 1e12 : inSystem(declaration.most, declaration, system);
  return {
    type: declaration.whole ? "whole" : "decimal",
    operator: "between",
    formulae: [least, most],
    ...said,
  };
}
