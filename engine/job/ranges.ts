import { suggestion } from "../formula/suggest.js";
import type { InputDeclaration } from "../template/declare.js";
import { inSystem, ruleInWords } from "../template/implied.js";
import type { Model } from "../template/model.js";
import { inputPlanOf } from "./input-plan.js";
import type { JobRecord, Range } from "./record.js";

/** What is wrong with the ranges of a job record, each with its name, value and rule. */
export function rangeFaults(model: Model, job: JobRecord): string[] {
  return Object.entries(job.ranges ?? {}).flatMap(([name, range]) => {
    const fault = rangeFault(model, name, range);
    return fault === undefined ? [] : [`ranges.${name} ${fault}`];
  });
}

function rangeFault(model: Model, name: string, range: Range): string | undefined {
  const declaration = model.byId.get(name)?.declaration;
  if (declaration?.kind !== "input") {
    const known = inputPlanOf(model).inputs.map(({ cell }) => cell.id);
    return `is not an input of template ${model.template.name}.${suggestion(name, known)} Name an input, a row's as runs.length[2].`;
  }
  if (declaration.quantity.kind !== "number") {
    return `is not a number (${declaration.label}), and only numbers can have a range. Take it out.`;
  }
  const { low, likely, high } = range;
  if (low > likely || likely > high) {
    return `is ${low}, ${likely}, ${high}, but must rise: low <= likely <= high. Put them in order.`;
  }
  return outside(model, declaration, range);
}

/** A range may not leave what the input itself may hold. */
function outside(model: Model, declaration: InputDeclaration, range: Range): string | undefined {
  const { least, most } = declaration;
  const here = (limit: number) => inSystem(limit, declaration, model.system);
  const low = least !== undefined && range.low < here(least);
  const high = most !== undefined && range.high > here(most);
  if (!low && !high) return undefined;
  return `reaches from ${range.low} to ${range.high}, but the input (${declaration.label}) must be ${ruleInWords(declaration, model.system)}. Draw the range in.`;
}
