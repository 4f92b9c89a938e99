import { learningTemplates } from "./learning/index.js";
import { templates as bids } from "./templates/index.js";

/** Every template that commands know: those of bids, and those of workbooks that learn from them. */
export const templates = [...bids, ...learningTemplates];
