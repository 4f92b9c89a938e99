import { calc, flow, input, percent, smallLength, table, text } from "../../../engine/template/index.js";
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

/** Each run whose depth was metered: the flow that the law for water over stone gives at that depth. */
export const runReadings = table(
  "run_readings",
  "Depth against the law for shallow water",
  { rows: capacity.runs, beside: "runs", shown: "depth_likely>0" },
  {
    reading: calc(text, "name", "Run"),
    metered: calc(
      smallLength,
      (row) => `IF(depth_likely>0,INDEX(built_runs.depth_metered,${row}),0)`,
      "Depth metered",
      {
        zero: "–",
      },
    ),
    law_flow: calc(flow, "IF(metered>0,CHANNEL_FLOW(width_counted,metered,side,stone_size,slope),0)", "Flow by law", {
      zero: "–",
    }),
    off: calc(percent, "IF(metered>0,SHARE_READ(metered/depth_likely-1),0)", "Depth over plan", {
      strong: true,
      zero: "–",
    }),
    means: calc(text, 'IF(metered>0,DEPTH_MEANS(off),"")', "What it means"),
  },
);
