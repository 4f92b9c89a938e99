import { addressOf } from "../address.js";
import type { Value } from "../formula/value.js";
import type { InputDeclaration } from "../template/declare.js";
import { type Cell, columnOf, type Model } from "../template/model.js";
import { inputPlanOf } from "./input-plan.js";

/** An input that holds none of its choices: a look-up by it finds nothing, and all that follows is in error. */
export interface BrokenChoice {
  readonly cell: Cell;
  readonly value: string;
  readonly choices: readonly string[];
}

/** The inputs that hold none of their choices, in the order of the sheets. */
export function brokenChoices(model: Model, values: readonly Value[]): BrokenChoice[] {
  return inputPlanOf(model).inputs.flatMap(({ cell }) => {
    const { choices: given } = cell.declaration as InputDeclaration;
    const value = values[cell.index] ?? null;
    if (given === undefined || typeof value !== "string" || value === "") return [];
    const choices = typeof given === "string" ? listed(model, values, given) : given;
    // as spreadsheets compare texts
    const isKnown = choices.some((one) => one.toLowerCase() === value.toLowerCase());
    return isKnown ? [] : [{ cell, value, choices }];
  });
}

function listed(model: Model, values: readonly Value[], column: string): string[] {
  const [table = "", key = ""] = column.split(".");
  return columnOf(model, table, key)
    .cells.map(({ index }) => values[index])
    .filter((one): one is string => typeof one === "string" && one !== "");
}

const mostChoices = 8;

/** `Site!G18 Wood: "red" is not one of oak, larch.` */
export function brokenChoiceInWords({ cell, value, choices }: BrokenChoice): string {
  const { sheet, column, line, declaration } = cell;
  const some = choices.slice(0, mostChoices).join(", ");
  const more = choices.length > mostChoices ? `, and ${choices.length - mostChoices} more` : "";
  const wanted = choices.length === 0 ? "a choice: its list is empty" : `one of ${some}${more}`;
  return `${sheet}!${addressOf(column, line)} ${declaration.label}: "${value}" is not ${wanted}.`;
}
