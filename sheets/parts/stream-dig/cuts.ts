import { area, calc, length, table, text } from "../../../engine/template/index.js";
import { soilVolume } from "../../vocabulary/quantities.js";
import { poolsTable } from "../stream/pools-table.js";
import { runsTable } from "../stream/runs-table.js";

const stripped = "MIN(strip_depth,deep)";

/** Each run as it is dug: the room for stone that will lie on the liner is cut too. */
export const channelCuts = table(
  "channel_cuts",
  "Channel as dug",
  { rows: runsTable.rows, opening: 1, beside: "runs", filled: "length+length_plus>0" },
  {
    run: calc(text, "name", "Run"),
    deep: calc(length, "bank_height+bed_stone_depth", "Depth"),
    deepest: calc(length, "IF(channel_cut>0,deep,0)", "Deepest cut", {
      note: "Where all of it is cut.",
    }),
    bottom: calc(length, "width_counted+2*channel_allowance", "Width at the bottom"),
    top: calc(length, "bottom+2*side*deep", "Width at the top"),
    dig: calc(soilVolume, "channel_cut*length_counted*(bottom+side*deep)*deep", "Dig"),
    topsoil: calc(
      soilVolume,
      `channel_cut*length_counted*(top-side*${stripped})*${stripped}`,
      "Topsoil stripped before",
      { working: true },
    ),
  },
);

/** Each pool as it is dug, with the same room for stone. */
export const poolCuts = table(
  "pool_cuts",
  "Pools as dug",
  { rows: poolsTable.rows, opening: 1, beside: "pools", filled: "length+length_plus>0" },
  {
    pool: calc(text, "name", "Pool"),
    deep: calc(length, "depth_counted*mean_depth+bed_stone_depth", "Mean depth"),
    deepest: calc(length, "IF(channel_cut>0,depth_counted+bed_stone_depth,0)", "Deepest cut", {
      note: "Where all of it is cut.",
    }),
    surface_dug: calc(
      area,
      "(length_counted+2*channel_allowance)*(width_counted+2*channel_allowance)*filled_share",
      "Surface",
    ),
    box_length: calc(length, "length_counted+2*channel_allowance", "Length at the bottom", { working: true }),
    box_width: calc(length, "width_counted+2*channel_allowance", "Width at the bottom", { working: true }),
    sloped: calc(
      soilVolume,
      "IF(pool_sides>0,filled_share*channel_cut*(PRISMOID(box_length,box_width,deepest,pool_sides)-box_length*box_width*deepest),0[yd³])",
      "Dig for sloped sides",
      { working: true, note: "Filled again." },
    ),
    dig: calc(soilVolume, "channel_cut*surface_dug*deep+sloped", "Dig"),
    topsoil: calc(soilVolume, `channel_cut*surface_dug*${stripped}`, "Topsoil stripped before", { working: true }),
    ground: calc(
      area,
      "(length_counted+2*(channel_allowance+strip_margin))*(width_counted+2*(channel_allowance+strip_margin))",
      "Ground stripped",
      { working: true },
    ),
  },
);
