import type { OpenedJob } from "../audit/index.js";
import { inputOrigins } from "../job/trail/origin.js";

/** Who gave an input its value, and why. */
export interface Reason {
  readonly from: string;
  readonly by?: string;
  readonly time?: string;
  readonly note?: string;
}

/** Looks the reason of an input up in the trail of a job. */
export function reasonsOf({ model, values, trail }: OpenedJob): (id: string) => Reason {
  const origins = inputOrigins(model, values, trail);
  return (id) => origins.get(id) ?? { from: "not in the trail" };
}

/** `measured on site, by A. Estimator, 2026-05-04: run two is longer`. */
export function reasonText({ from, by, time, note }: Reason): string {
  const parts = [from, by === undefined ? "" : `by ${by}`, time?.slice(0, 10) ?? ""];
  const said = parts.filter((part) => part !== "").join(", ");
  return note === undefined ? said : `${said}: ${note}`;
}
