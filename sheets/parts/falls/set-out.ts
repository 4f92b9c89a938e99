import {
  type Block,
  calc,
  count,
  length,
  lines,
  panel,
  place,
  row,
  table,
  text,
} from "../../../engine/template/index.js";
import { fallsTable } from "./falls-table.js";

const { rows, filled = "TRUE" } = fallsTable;
const ofLevel = (column: string) => `PICK(course.${column},course.level,level)`;

/** Where each lip stands, along from the basin's edge and up from its rim. */
export const setOutPoints: readonly Block[] = [
  table(
    "lip_points",
    "Points to set out",
    { rows, beside: "falls", filled },
    {
      number: calc(count, (at) => String(at), "Row"),
      from_basin: calc(length, `course_finish-${ofLevel("lip_along")}`, "Lip from basin's edge"),
      foot: calc(length, `${ofLevel("foot")}-${ofLevel("run_depth")}`, "Bed at foot over rim"),
    },
  ),
  lines("Points in use", { lips_set_out: calc(count, "MAX(lip_points.number)", "Last lip in use") }),
];

/** A table for a person with a tape and a level. */
export const setOut: readonly Block[] = [
  panel([
    row(18, place([1, 12], "heading", "Set out, with a tape and a level")),
    row(
      24,
      place(
        [1, 12],
        "small",
        "Benchmark: the rim of the basin. Tape along the middle of the course, from the edge of the basin at which the stream ends, uphill. Heights, here and in the drawing of the course, are over the rim, with a minus below it. A drop goes from water to water; the bed at a foot lies under its water.",
      ),
    ),
  ]),
  table(
    "set_out",
    "",
    {
      rows,
      beside: "falls",
      filled,
      paper: {
        header: true,
        size: 9,
        spare: 0,
        used: "lips_set_out",
        across: {
          point: [1, 3],
          distance: [4, 1],
          lip: [5, 2],
          bed: [7, 2],
          wide: [9, 1],
          flow: [10, 1],
          drop_said: [11, 1],
          lands: [12, 1],
        },
      },
    },
    {
      point: calc(text, "~{name}, level {level|0}", "Lip", { reader: "crew" }),
      distance: calc(text, (at) => `~{lip_points.from_basin[${at}]}`, "Tape", { reader: "crew" }),
      lip: calc(text, "~{lip_above_rim|2}", "Top of lip", { reader: "crew" }),
      bed: calc(text, (at) => `~{lip_points.foot[${at}]|2}`, "Bed at its foot", { reader: "crew" }),
      wide: calc(text, "~{lip_across}", "Width", { reader: "crew" }),
      flow: calc(text, "~{actual_flow|0|bare}", "‹gal/min|L/min›", { reader: "crew" }),
      drop_said: calc(text, "~{drop_counted}", "Drop", { reader: "crew" }),
      lands: calc(text, "~{throw}", "Lands out", { reader: "crew" }),
    },
  ),
];
