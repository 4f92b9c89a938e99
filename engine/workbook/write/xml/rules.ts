import type { DataValidation } from "exceljs";
import type { Conditional } from "../book/sheet.js";
import type { Styles } from "./styles.js";
import { attribute, content } from "./text.js";

/** Rules for the look of cells (ISO/IEC 29500-1, 18.3.1.18). */
export function conditionalsXml(all: readonly Conditional[], styles: Styles): string {
  return all
    .map(({ ref, rules }) => {
      const said = rules.map((rule) => {
        if (rule.type !== "expression") throw new Error(`A rule of type ${rule.type}.`);
        const change = styles.differenceOf(rule.style ?? {});
        const [test] = rule.formulae ?? [];
        return `<cfRule type="expression" dxfId="${change}" priority="${rule.priority}"><formula>${content(String(test))}</formula></cfRule>`;
      });
      return `<conditionalFormatting sqref="${ref}">${said.join("")}</conditionalFormatting>`;
    })
    .join("");
}

/** Rules for what is typed into areas, by their addresses (ISO/IEC 29500-1, 18.3.1.33). */
export function validationsXml(all: ReadonlyMap<string, DataValidation>): string {
  if (all.size === 0) return "";
  const inTurn = [...all].sort(([a], [b]) => (a < b ? -1 : 1));
  const said = inTurn.map(([area, rule]) => validationXml(area, rule));
  return `<dataValidations count="${all.size}">${said.join("")}</dataValidations>`;
}

function validationXml(area: string, rule: DataValidation): string {
  const yes = (name: string, is: boolean | undefined) => (is ? ` ${name}="1"` : "");
  const said = (name: string, text: string | undefined) =>
    text ? ` ${name}="${attribute(text)}"` : "";
  const formulas = rule.formulae.map(
    (one, i) => `<formula${i + 1}>${content(String(one))}</formula${i + 1}>`,
  );
  return (
    `<dataValidation type="${rule.type}"${yes("allowBlank", rule.allowBlank)}` +
    yes("showInputMessage", rule.showInputMessage) +
    said("promptTitle", rule.promptTitle) +
    said("prompt", rule.prompt) +
    yes("showErrorMessage", rule.showErrorMessage) +
    said("errorStyle", rule.errorStyle) +
    said("errorTitle", rule.errorTitle) +
    said("error", rule.error) +
    ` sqref="${area}">${formulas.join("")}</dataValidation>`
  );
}
