import type { Cone } from "../evaluate/cone.js";
import { CellError, type Value } from "../formula/value.js";
import { writtenDate } from "../job/date.js";
import type { Built, BuiltTasks } from "../template/built.js";
import { columnOf, type Model, valueNamed } from "../template/model.js";

/** What one task of a built job took. */
export interface TaskTaken {
  readonly task: string;
  /** The code of its rate in the office book. */
  readonly code: string;
  readonly unit: string;
  readonly quantity: number;
  readonly hours: number;
  /** By which the work was slower than the rate says. */
  readonly factor: number;
  /** The rate that the job was planned with. */
  readonly planned: number;
  /** How many units were planned; undefined where that cannot be calculated. */
  readonly plannedQuantity?: number;
}

/** A built job as evidence. */
export interface BuiltJob {
  readonly job: string;
  readonly ended: string;
  /** The condition that jobs are told apart by. */
  readonly condition: string;
  readonly tasks: readonly TaskTaken[];
  /** Tasks with hours or a quantity that tell no rate: one of them missing or zero, or a cell in error. */
  readonly half: number;
}

/** A bid that was won or lost. */
export interface Decided {
  readonly job: string;
  readonly won: boolean;
  readonly price: number;
  readonly cost: number;
  /** The day of the decision, where it is given. */
  readonly on: string;
}

/** A built job, or in words why there is none; and how its bid was decided, where it was. */
export type Looked = ({ readonly built: BuiltJob } | { readonly because: string }) & {
  readonly decided?: Decided;
};

/** The cells of the role `built` that evidence is made of, by id. */
export function cellsOf(model: Model): string[] {
  const { built, price = "", cost = "" } = model.template.roles ?? {};
  if (built === undefined) return [];
  const columns = columnsOf(model, built.tasks);
  const ids = Object.values(columns).flatMap((cells) => cells.map(({ id }) => id));
  return [...ids, price, cost, built.state, built.ended, built.tasks.byHand, ...built.conditions];
}

const wanted = [
  "task",
  "unit",
  "rateCode",
  "handRateCode",
  "rate",
  "factor",
  "plannedQuantity",
  "quantity",
  "hours",
] as const;

type Columns = Readonly<Record<(typeof wanted)[number], readonly { id: string; index: number }[]>>;

function columnsOf(model: Model, tasks: BuiltTasks): Columns {
  const cells = wanted.map((part) => {
    const [table = "", column = ""] = tasks[part].split(".");
    return [part, columnOf(model, table, column).cells] as const;
  });
  return Object.fromEntries(cells) as unknown as Columns;
}

/**
 * What a job says that it took, and how its bid was decided. Its state is asked before anything is calculated.
 *
 * @param given the job's inputs with its office-book rows
 * @param condition the cell that jobs are told apart by
 */
export function builtJob(
  model: Model,
  job: string,
  given: readonly Value[],
  cone: Cone,
  condition: string,
): Looked {
  const { roles } = model.template;
  const { built } = roles ?? {};
  if (roles === undefined || built === undefined) {
    throw new RangeError(`Template ${model.template.name} has no role built.`);
  }
  const state = valueNamed(model, given, built.state);
  const { states } = built;
  const isBuilt = state === states.built;
  const otherwise = { because: `its state is "${String(state ?? "")}"` };
  if (!isBuilt && state !== states.won && state !== states.lost) return otherwise;
  const values = cone.calculate(given);
  const on = valueNamed(model, given, built.decided);
  const [price, cost] = [
    valueNamed(model, values, roles.price),
    valueNamed(model, values, roles.cost),
  ];
  const known = isMore(price) && isMore(cost);
  const decided = known && {
    decided: {
      ...{ job, price, cost, won: state !== states.lost },
      on: typeof on === "number" ? writtenDate(on) : "",
    },
  };
  const looked = isBuilt ? tookIn(model, built, job, values, condition) : otherwise;
  return { ...looked, ...decided };
}

function tookIn(
  model: Model,
  built: Built,
  job: string,
  values: readonly Value[],
  condition: string,
): Looked {
  const ended = valueNamed(model, values, built.ended);
  if (typeof ended !== "number") {
    return { because: `it is built, but its last day of work (${built.ended}) is not given` };
  }
  const byHand = valueNamed(model, values, built.tasks.byHand);
  if (byHand instanceof CellError) return { because: `${built.tasks.byHand} is in error` };
  const { tasks, half } = tasksOf(columnsOf(model, built.tasks), values, byHand === true);
  if (tasks.length === 0) {
    return {
      because: `it is built, but no task has both ${built.tasks.quantity} and ${built.tasks.hours}`,
    };
  }
  const said = valueNamed(model, values, condition);
  return {
    built: {
      ...{ job, ended: writtenDate(ended), tasks, half },
      condition: typeof said === "string" ? said : "",
    },
  };
}

function tasksOf(columns: Columns, values: readonly Value[], byHand: boolean) {
  const tasks: TaskTaken[] = [];
  let half = 0;
  columns.hours.forEach((_, row) => {
    const held = (part: keyof Columns): Value => values[columns[part][row]?.index ?? -1] ?? null;
    const [quantity, hours, factor, planned] = [
      held("quantity"),
      held("hours"),
      held("factor"),
      held("rate"),
    ];
    if (quantity === null && hours === null) return;
    const code = held(byHand ? "handRateCode" : "rateCode");
    const [task, unit, bid] = [held("task"), held("unit"), held("plannedQuantity")];
    if (
      isMore(quantity) &&
      isMore(hours) &&
      isMore(factor) &&
      isMore(planned) &&
      typeof code === "string"
    ) {
      tasks.push({
        task: String(task),
        code,
        unit: String(unit),
        quantity,
        hours,
        factor,
        planned,
        ...(typeof bid === "number" ? { plannedQuantity: bid } : {}),
      });
    } else half += 1;
  });
  return { tasks, half };
}

/** A zero done, or done in no time, tells no rate. */
const isMore = (value: Value): value is number => typeof value === "number" && value > 0;
