import { calc, check, length, table, text } from "../../../engine/template/index.js";
import { waterVolume } from "../../vocabulary/quantities.js";
import { capacity } from "../capacity.js";

/** What a stop draws off from each pool: down to the deepest open end, never more than it holds. */
export const poolSiphons = table(
  "pool_siphons",
  "Pools siphoned at a stop",
  {
    rows: capacity.pools,
    beside: "pools",
    filled: "length>0",
    note: "Counted with upright sides down to the pipe's end, and never more than the pool holds.",
  },
  {
    pool: calc(text, "name", "Pool"),
    drawn: calc(
      length,
      "MIN(depth,LARGEST_WHERE(pipe_lines.pool_drawn,pipe_lines.outlet_level,before_level))",
      "Drawn down by",
      { zero: "–" },
    ),
    water_drawn: calc(waterVolume, "MIN(water_standing,surface*drawn)", "Siphoned", { zero: "–" }),
    keeps_water: check(
      "drawn<=0.5*depth",
      "A stop draws {pool} down by {drawn} of its {depth}; {water_drawn} run to the basin. Fit an air break in the line.",
      { label: "Pool drained at a stop", level: "look" },
    ),
  },
);
