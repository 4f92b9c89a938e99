import type { Stage } from "../plan/stages.js";
import type { ProductionRate } from "./rates.js";

/** A task of the crew: what drives it, its production rate, and what slows it. */
export interface Task {
  readonly task: string;
  readonly stage: Stage;
  /** A formula for the quantity: a length, an area, a weight … as the rate counts in one, or a count. */
  readonly quantity: string;
  readonly rate: ProductionRate;
  /** Share of the labor hours spent in the machine's seat: common practice, no source. */
  readonly machine_share: number;
  readonly by_access: boolean;
  readonly by_haul: boolean;
  readonly by_soil: boolean;
  /** A dig stands open while it is done, and is inspected. */
  readonly open_dig: boolean;
}

type Slowing = "by_access" | "by_haul" | "by_soil" | "open_dig";

/** A task with its place in the order of building; nothing slows it, and no machine does it, unless told. */
export const task = (
  name: string,
  stage: Stage,
  quantity: string,
  rate: ProductionRate,
  slowed: readonly Slowing[] = [],
  machine_share = 0,
): Task => ({
  task: name,
  stage,
  quantity,
  rate,
  machine_share,
  by_access: slowed.includes("by_access"),
  by_haul: slowed.includes("by_haul"),
  by_soil: slowed.includes("by_soil"),
  open_dig: slowed.includes("open_dig"),
});
