import { calc, length, precise, smallLength, table } from "../../../engine/template/index.js";
import { runInUse, runsTable } from "./runs-table.js";

/** A run whose width is not given yet has no depth. */
const running = (formula: string) => `IF(AND(flow>0,width_counted>0),${formula},0)`;

/** One pass of the search over stone: radius and flow at a depth, then the nearer depth. */
const pass = (name: string, from: string, label: string) => ({
  [`radius_${name}`]: calc(length, running(`HYDRAULIC_RADIUS(width_counted,${from},side)`), "Hydraulic radius", {
    decimals: 4,
  }),
  [`depth_${name}`]: calc(
    smallLength,
    running(`NEARER_DEPTH(flow,${from},radius_${name},width_counted,side,stone_size,slope)`),
    label,
    { decimals: 4 },
  ),
});

const manningPass = (from: string, label: string) =>
  calc(smallLength, running(`MANNING_PASS(${from},section,width_counted,side)`), label, { decimals: 4 });

/** How the depth of each run is found: by the law for shallow water over stone, and by Manning. */
export const depthSearch = table(
  "stream_depths",
  "Search for depth",
  {
    working: true,
    rows: runsTable.rows,
    opening: 1,
    beside: "runs",
    filled: runInUse,
    printed: false,
    note: "Four passes by Ferguson's law for water over stone, three by Manning's formula to compare. Each starts from a channel without sides.",
  },
  {
    depth_start: calc(
      smallLength,
      running("STREAM_START(flow,width_counted,stone_size,slope)"),
      "Depth, sides left out",
      {
        decimals: 4,
      },
    ),
    ...pass("first", "depth_start", "Depth, first pass"),
    ...pass("second", "depth_first", "Depth, second pass"),
    ...pass("third", "depth_second", "Depth, third pass"),
    ...pass("fourth", "depth_third", "Depth, fourth pass"),
    flow_back: calc(
      precise,
      running("CHANNEL_FLOW(width_counted,depth_fourth,side,stone_size,slope)/flow"),
      "Carried flow over actual flow",
    ),
    section: calc(
      precise,
      "MANNING_SECTION(flow,PICK(beds.roughness,beds.name,bed),slope)",
      "Manning: section required",
    ),
    manning_start: calc(smallLength, running("WIDE_DEPTH(section,width_counted)"), "Manning: sides left out", {
      decimals: 4,
    }),
    manning_first: manningPass("manning_start", "Manning: first pass"),
    manning_second: manningPass("manning_first", "Manning: second pass"),
    manning_third: manningPass("manning_second", "Manning: third pass"),
  },
);
