/** What other rooms use of the audit: a job opened from a file, and single checks of a workbook. */
export { checkWrittenPrices } from "./changed-prices.js";
export { withPath } from "./cures.js";
export type { Finding } from "./finding.js";
export { checkPublished } from "./fixed-figures.js";
export { checkFormulas } from "./formulas.js";
export { heldInput } from "./held-input.js";
export { modelFor } from "./identity.js";
export { checkPlaces } from "./moved-cells.js";
export { type OpenedJob, openJob } from "./open.js";
export { checkValues, recalculated } from "./recalculate.js";
export { stands } from "./stands.js";
export { agree, formulaIn, heldBy, type Subject } from "./subject.js";
