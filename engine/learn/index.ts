// What other rooms may use of this one.
export type { BuiltJob, Decided, TaskTaken } from "./built-job.js";
export { type Collected, collect, type Found, type PassedOver } from "./collect.js";
export { type Exclusion, exclusionsIn } from "./exclusions.js";
export { type Evidence, evidenceOf, isLearning, type Learning } from "./record.js";
export { overrunToTake, type TakenOverrun, withOverrun } from "./take-overrun.js";
export { notLearned, ratesToTake, type TakenRate, withRates } from "./take-rates.js";
