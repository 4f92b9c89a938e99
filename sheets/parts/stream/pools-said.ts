import { calc, length, lines, table, text } from "../../../engine/template/index.js";
import { poolsTable } from "./pools-table.js";

/** Each pool as the customer reads of it. */
export const poolsSaid = table(
  "pools_said",
  "Pools, in words",
  { rows: poolsTable.rows, beside: "pools", filled: "length_counted>0" },
  {
    said: calc(text, "~{name}, about {length_counted} by {width_counted} and up to {water_depth|up} deep", "Pool", {
      reader: "customer",
    }),
  },
);

/** The open water of pools and of the basins that lines end in. */
export const openWater = lines("Open water, in words", {
  pools_in_words: calc(text, 'TEXTJOIN(", and in ",TRUE,pools_said.said)', "Pools, in words"),
  open_water_depth: calc(length, "MAX(deepest_water,MAX(pipe_lines.pot_deep))", "Deepest open water"),
  open_water_said: calc(text, "~{open_water_depth|up}", "Deepest open water, in words", { reader: "customer" }),
});
