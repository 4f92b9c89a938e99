import { type Block, calc, count, lines, panel, place, row, table, text } from "../../../engine/template/index.js";
import { runsTable } from "../stream/runs-table.js";

const { rows, filled = "TRUE" } = runsTable;
const crew = { reader: "crew" } as const;

/** The last run in use: as many rows the crew's table shows. */
export const runsCounted: readonly Block[] = [
  table(
    "runs_numbered",
    "Runs in use",
    { rows, beside: "runs", filled },
    { number: calc(count, (at) => String(at), "Row") },
  ),
  lines("Last run", { runs_told_count: calc(count, "MAX(runs_numbered.number)", "Last run in use") }),
];

/** The runs for a person with a shovel: as they finish, and as they are dug. */
export const runsTold: readonly Block[] = [
  panel([
    row(6),
    row(
      13,
      place(
        [1, 12],
        "small",
        "Water: mean depth between the stones, to the most planned for. Dig, where ground is cut: from the top of the bank; width at bottom and top.",
      ),
    ),
  ]),
  table(
    "runs_told",
    "",
    {
      rows,
      beside: "runs",
      filled,
      paper: {
        header: true,
        size: 9,
        spare: 0,
        used: "runs_told_count",
        across: {
          run: [1, 3],
          long: [4, 1],
          wide: [5, 1],
          banks: [6, 1],
          falling: [7, 1],
          water: [8, 2],
          dug: [10, 1],
          sides: [11, 2],
        },
      },
    },
    {
      run: calc(text, "~{name}, {bed}", "Run, its bed"),
      long: calc(text, "~{length_counted}", "Long", crew),
      wide: calc(text, "~{width_counted}", "Bed", crew),
      banks: calc(text, "~{bank_height|up}", "Banks", crew),
      falling: calc(text, "~{fall_counted}", "Falls", crew),
      water: calc(text, "~{depth_likely} to {depth|up}", "Water", crew),
      dug: calc(text, (at) => `~{channel_cuts.deepest[${at}]|up}`, "Dig", crew),
      sides: calc(text, (at) => `~{channel_cuts.bottom[${at}]|up}, {channel_cuts.top[${at}]|up}`, "Bottom, top", crew),
    },
  ),
];
