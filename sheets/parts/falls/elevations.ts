import { calc, check, count, length, lines, table, walk } from "../../../engine/template/index.js";
import { levelsTable } from "./levels-table.js";

/** A reading of nothing stands for none. */
const reading = { optional: true, least: 0.01, most: 100 } as const;

/** The benchmark that all heights are read against. */
export const benchmark = lines("Elevations by rod", {
  rod_rim: walk(length, "Rod at basin rim", {
    section: "Elevations",
    ...reading,
    note: "The benchmark, from one set-up of the level. A higher place reads less.",
  }),
  benchmark_read: check(
    "OR(rod_rim>0,SUM(pipe_lines.rod_end)=0)",
    "Pipe ends are read by rod, but the basin rim is not, so they have no height. Enter rod_rim on sheet Walk.",
    { label: "Benchmark not read" },
  ),
});

/** Readings by level, and the heights between them. */
export const elevations = table(
  "elevations",
  "Elevations by rod",
  {
    section: "Elevations",
    rows: levelsTable.rows,
    shown: "OR(rod_drop<>0,rod_fall<>0)",
    beside: "levels",
    note: "All from one set-up of the level. A drop or a fall that is given directly counts before these.",
  },
  {
    level: calc(count, "number", "Level"),
    rod_lip: walk(length, "Rod at lip", { ...reading, note: "On the lip stone, or where it will lie." }),
    rod_landing: walk(length, "Rod at landing", { ...reading, note: "At the water that the fall lands in." }),
    order: calc(count, "above.order+IF(in_use,1,0)", "Levels in use so far", {
      working: true,
      first: "IF(in_use,1,0)",
    }),
    next: calc(count, "PLACE_OR_ZERO(elevations.order,order+1)", "Level below", {
      working: true,
      note: "The next in use; 0 for the basin's rim.",
    }),
    rod_below: calc(
      length,
      "IF(next>0,PICK(elevations.rod_lip,elevations.level,next),IF(rod_rim>0,rod_rim,0))",
      "Rod at end of runs",
    ),
    rod_drop: calc(length, "IF(AND(rod_lip>0,rod_landing>0),rod_landing-rod_lip,0)", "Drop by rod"),
    rod_fall: calc(length, "IF(AND(rod_landing>0,rod_below>0),rod_below-rod_landing,0)", "Fall of runs by rod"),
    reads_down: check(
      "AND(rod_drop>=0,rod_fall>=0)",
      "Level {level|0}: by rod its lip, landing and the next lip do not go down. Correct the readings of elevations on sheet Walk.",
      { label: "Rod readings run uphill" },
    ),
    drop_agrees: check(
      "OR(rod_drop<=0,ABS(drop-rod_drop)<=height_tolerance)",
      "Level {level|0}: its drop by rod is {rod_drop}, but another is given for its falls. Correct one of them on sheet Walk.",
      { label: "Drop contradicts the rod", level: "look" },
    ),
    fall_agrees: check(
      "OR(rod_fall<=0,ABS(run_fall-rod_fall)<=height_tolerance)",
      "Level {level|0}: its runs fall {rod_fall} by rod, but another sum is given. Correct one of them on sheet Walk.",
      { label: "Runs contradict the rod", level: "look" },
    ),
  },
);
