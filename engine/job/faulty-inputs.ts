import { addressOf } from "../address.js";
import type { Value } from "../formula/value.js";
import type { InputDeclaration } from "../template/declare.js";
import { inSystem, ruleInWords } from "../template/implied.js";
import { type Cell, columnOf, type Model } from "../template/model.js";
import { inputPlanOf } from "./input-plan.js";

/**
 * An input that breaks its rule. Of a choice that is none, a look-up finds nothing, and all that follows is in
 * error; of a number beyond its limits, all that follows is a figure that may not stand.
 */
export interface FaultyInput {
  readonly cell: Cell;
  readonly value: string | number;
  /** `one of oak, larch` or `0% to 60%`. */
  readonly rule: string;
  readonly choices?: readonly string[];
}

/** The inputs that break their rules, in the order of the sheets. Blank ones are `missingInputs`. */
export function faultyInputs(model: Model, values: readonly Value[]): FaultyInput[] {
  return inputPlanOf(model).inputs.flatMap(({ cell }) => {
    const value = values[cell.index] ?? null;
    if (typeof value === "number") return beyondLimits(model, cell, value);
    return typeof value === "string" && value !== "" ? noChoice(model, values, cell, value) : [];
  });
}

function beyondLimits(model: Model, cell: Cell, value: number): FaultyInput[] {
  const declaration = cell.declaration as InputDeclaration;
  const { least, most, whole } = declaration;
  const here = (limit: number) => inSystem(limit, declaration, model.system);
  const within =
    (least === undefined || value >= here(least)) &&
    (most === undefined || value <= here(most)) &&
    (!whole || Number.isInteger(value));
  return within ? [] : [{ cell, value, rule: ruleInWords(declaration, model.system) }];
}

function noChoice(
  model: Model,
  values: readonly Value[],
  cell: Cell,
  value: string,
): FaultyInput[] {
  const { choices: given } = cell.declaration as InputDeclaration;
  if (given === undefined) return [];
  const choices = typeof given === "string" ? listed(model, values, given) : given;
  // as spreadsheets compare texts
  if (choices.some((one) => one.toLowerCase() === value.toLowerCase())) return [];
  return [{ cell, value, rule: choiceInWords(choices), choices }];
}

function listed(model: Model, values: readonly Value[], column: string): string[] {
  const [table = "", key = ""] = column.split(".");
  return columnOf(model, table, key)
    .cells.map(({ index }) => values[index])
    .filter((one): one is string => typeof one === "string" && one !== "");
}

const mostChoices = 8;

function choiceInWords(choices: readonly string[]): string {
  const some = choices.slice(0, mostChoices).join(", ");
  const more = choices.length > mostChoices ? `, and ${choices.length - mostChoices} more` : "";
  return choices.length === 0 ? "a choice: its list is empty" : `one of ${some}${more}`;
}

/** `Site!G18 Wood (wood): "red" is not one of oak, larch.` A percentage typed as `25` is told as `25%`. */
export function faultyInputInWords({ cell, value, rule }: FaultyInput): string {
  const { sheet, column, line, declaration, id } = cell;
  const given = typeof value === "string" ? JSON.stringify(value) : asTyped(cell, value);
  const percent = declaration.quantity.percent && typeof value === "number" && value >= 1;
  const advice = percent ? ` For ${value}% type ${value}% or ${asShare(value)}.` : "";
  return `${sheet}!${addressOf(column, line)} ${declaration.label} (${id}): ${given} is not ${rule}.${advice}`;
}

/** With all its decimals: one that is not shown may be what is wrong. */
function asTyped({ declaration, unit }: Cell, value: number): string {
  if (declaration.quantity.percent) return `${Number((value * 100).toPrecision(12))}%`;
  return `${Number(value.toPrecision(12))}${unit.name === "" ? "" : ` ${unit.name}`}`;
}

const asShare = (value: number): number => Number((value / 100).toPrecision(6));

/** The same for programs. */
export const faultyInputsAsJson = (faulty: readonly FaultyInput[]) =>
  faulty.map(({ cell: { id, sheet, column, line, declaration }, value, rule, choices }) => ({
    name: id,
    cell: `${sheet}!${addressOf(column, line)}`,
    label: declaration.label,
    ...{ value, rule },
    ...(choices === undefined ? {} : { choices }),
  }));
