import type { Value } from "../formula/value.js";
import type { OfficeValues } from "../template/book-layout.js";
import type { Model } from "../template/model.js";
import { type InputPlan, inputPlanOf, type PlannedInput } from "./input-plan.js";
import type { JobRecord, RowValues } from "./record.js";
import { mustBeUsable, unaskedOf, valueFor } from "./values.js";

/**
 * The values of a job under one office book after another: from the second on, only inputs that two books fill
 * otherwise are looked at again. Each call gives what `inputValues` gives, in a list of its own, or throws the same.
 */
export class JobValues {
  #first: { readonly plan: InputPlan; readonly values: readonly Value[] } | undefined;

  constructor(
    private readonly model: Model,
    private readonly job: JobRecord,
    private readonly first: (office: OfficeValues) => Value[],
  ) {}

  under(office: OfficeValues): Value[] {
    const plan = inputPlanOf(this.model, office);
    if (this.#first !== undefined) return this.#again(this.#first, plan);
    const values = this.first(office);
    // a copy, since what is handed out has the office book's rows filled in
    this.#first = { plan, values: values.slice() };
    return values;
  }

  #again({ plan, values }: { plan: InputPlan; values: readonly Value[] }, to: InputPlan): Value[] {
    const { job, model } = this;
    const unasked = unaskedOf(to, job);
    const now = values.slice();
    for (const input of otherwise(plan, to)) {
      const { index, row = 0 } = input.cell;
      const given = input.table === undefined ? undefined : job.inputs[input.table];
      const rows = Array.isArray(given) ? (given as readonly (RowValues | null)[]) : undefined;
      const isAsked = rows !== undefined && (input.ownRows || row <= rows.length);
      const asks = input.table === undefined || isAsked;
      now[index] = asks ? valueFor(input, job, rows) : (unasked[index] as Value);
    }
    mustBeUsable(model, to, job, now);
    return now;
  }
}

const known = new WeakMap<InputPlan, WeakMap<InputPlan, readonly PlannedInput[]>>();

/** The inputs that one plan fills otherwise than the other, as the other has them. */
function otherwise(from: InputPlan, to: InputPlan): readonly PlannedInput[] {
  const of = known.get(from) ?? new WeakMap<InputPlan, readonly PlannedInput[]>();
  known.set(from, of);
  const made = of.get(to) ?? to.inputs.filter((input, i) => !isAlike(input, from.inputs[i]));
  of.set(to, made);
  return made;
}

function isAlike(one: PlannedInput, other: PlannedInput | undefined): boolean {
  const keys = ["cell", "ownRows", "isOpen", "inUseFrom", "ready", "ofRow", "usual"] as const;
  return other !== undefined && keys.every((key) => one[key] === other[key]);
}
