import type { InputDeclaration } from "../template/declare.js";
import { type Cell, columnOf, type Model } from "../template/model.js";

/** An input whose choices stand in a column of the same job. */
export interface ChoiceInput {
  readonly cell: Cell;
  readonly among: readonly number[];
}

/** Inputs that are looked at one by one, whatever office book the job is under: worked out once for all jobs. */
interface CheckedInputs {
  readonly dates: readonly Cell[];
  readonly choices: readonly ChoiceInput[];
}

const known = new WeakMap<Model, CheckedInputs>();

export function checkedInputsOf(model: Model): CheckedInputs {
  const found = known.get(model);
  if (found !== undefined) return found;
  const inputs = model.cells.filter(({ declaration }) => declaration.kind === "input");
  const made: CheckedInputs = {
    dates: inputs.filter(({ declaration }) => declaration.quantity.kind === "date"),
    choices: inputs.flatMap((cell) => choiceOf(model, cell, cell.declaration as InputDeclaration)),
  };
  known.set(model, made);
  return made;
}

/** Choices from an office-book or calculated column are known only later: the bid's own checks look at them. */
function choiceOf(model: Model, cell: Cell, { choices }: InputDeclaration): ChoiceInput[] {
  if (typeof choices !== "string") return [];
  const [tableName = "", key = ""] = choices.split(".");
  const { cells, declaration } = columnOf(model, tableName, key);
  if (declaration.kind === "book" || declaration.kind === "calc") return [];
  return [{ cell, among: cells.map(({ index }) => index) }];
}
