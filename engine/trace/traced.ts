import type { Value } from "../formula/value.js";
import type { Model } from "../template/model.js";
import type { Origins } from "./origin.js";

/** A calculated job, as a trace needs it. */
export interface Traced {
  readonly model: Model;
  readonly values: readonly Value[];
  readonly origins: Origins;
}
