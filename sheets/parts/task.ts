import type { Stage } from "../plan/stages.js";
import type { ProductionRate, Ways } from "./rates.js";

/** A task of the crew: what drives it, its production rates, and what slows it. */
export interface Task extends Slowed {
  readonly task: string;
  readonly stage: Stage;
  /** A formula for the quantity: a length, an area, a weight … as the rate counts in one, or a count. */
  readonly quantity: string;
  /** With a machine, where one helps; its share of the hours: common practice, no source. */
  readonly ways: Ways;
}

interface Slowed {
  /** Slower with a small machine than with a large one. */
  readonly by_access: boolean;
  readonly by_haul: boolean;
  /** By hand, the way is in a task of its own: dirt is wheeled apart. */
  readonly wheeled: boolean;
  readonly by_soil: boolean;
  /** A dig stands open while it is done, and is inspected. */
  readonly open_dig: boolean;
}

type Slowing = keyof Slowed;

/** A task with its place in the order of building; nothing slows it, and no machine does it, unless told. */
export const task = (
  name: string,
  stage: Stage,
  quantity: string,
  ways: ProductionRate | Ways,
  slowed: readonly Slowing[] = [],
): Task => ({
  task: name,
  stage,
  quantity,
  ways: "byHand" in ways ? ways : { rate: ways, byHand: ways, machineShare: 0 },
  by_access: slowed.includes("by_access"),
  by_haul: slowed.includes("by_haul"),
  wheeled: slowed.includes("wheeled"),
  by_soil: slowed.includes("by_soil"),
  open_dig: slowed.includes("open_dig"),
});

/** The rates of a task, each once. */
export const ratesOf = ({ ways: { rate, byHand } }: Task): ProductionRate[] =>
  rate === byHand ? [rate] : [rate, byHand];
