import type { Template } from "../../engine/template/index.js";
import { bubblingStones } from "./bubbling-stones.js";
import { waterfall } from "./waterfall.js";

/** Every template and version that this program can calculate. */
export const templates: readonly Template[] = [waterfall, bubblingStones];

export { bubblingStones, waterfall };
