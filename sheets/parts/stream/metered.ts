import { calc, input, smallLength, table, text } from "../../../engine/template/index.js";
import { capacity } from "../capacity.js";

/** How deep the stream runs. */
export const builtRuns = table(
  "built_runs",
  "Depth metered by run",
  { rows: capacity.runs, beside: "runs", shown: "depth_planned>0" },
  {
    run: calc(text, "name", "Run"),
    depth_planned: calc(smallLength, "depth_likely", "Depth planned"),
    depth_metered: input(smallLength, "Depth metered", {
      optional: true,
      least: 0,
      most: 60,
      note: "Mean of several places, from the bed's stone up.",
    }),
  },
);
