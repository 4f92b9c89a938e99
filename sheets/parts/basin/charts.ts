import { calc, chart, table, text } from "../../../engine/template/index.js";
import { waterVolume } from "../../vocabulary/quantities.js";
import type { Whole } from "../brought.js";

const needed = (cell: string) => (row: number) => (row === 1 ? cell : "0[gal]");

/** The bars of the chart: what is needed, part by part, over what is held. */
export const waterBars = ({ words }: Pick<Whole, "words">) =>
  table(
    "basin_bars",
    "Water needed and held, bars",
    { rows: 2 },
    {
      bar: calc(text, (row) => (row === 1 ? '"Needed"' : '"Held, full"'), "Bar"),
      minimum: calc(waterVolume, needed("below_pump_minimum"), "Below pump minimum"),
      stream: calc(waterVolume, needed("water_into_stream"), words["in the stream"]),
      drained: calc(waterVolume, needed("water_drained_back"), "Drain-back"),
      reserve: calc(waterVolume, needed("water_reserve"), "Reserve"),
      held: calc(waterVolume, (row) => (row === 2 ? "basin_water_held" : "0[gal]"), "Held"),
    },
  );

const part = (label: string, column: string) =>
  ({ label, x: "basin_bars.bar", y: `basin_bars.${column}`, marks: "stack", says: true }) as const;

/** Does the basin hold what is needed? */
export const waterChart = ({ words }: Pick<Whole, "words">) =>
  chart(
    "Basin water needed and held",
    "Water",
    "",
    [
      part("Below pump minimum", "minimum"),
      part(words["in the stream"], "stream"),
      part("Drain-back", "drained"),
      part("Reserve", "reserve"),
      part("Held, full", "held"),
    ],
    {
      alt: "Two bars: the water needed, part by part, over the water that the full basin holds.",
      lines: 13,
    },
  );

/** How the level falls from day to day where nothing is filled. */
export const daysChart = chart(
  "Levels between fills",
  "Time without a fill",
  "Level above basin bottom",
  [
    { label: "At rest", x: "basin_days.dry_days", y: "basin_days.rest_level", marks: "line", look: "long dashes" },
    { label: "Running", x: "basin_days.dry_days", y: "basin_days.running_level", marks: "line", look: "broad" },
    { label: "Lowest for pump", x: "basin_days.dry_days", y: "basin_days.lowest", marks: "line", look: "dotted" },
  ],
  {
    alt: "Level over days without a fill, at rest and running, over the lowest level that the pump allows.",
    lines: 18,
  },
);
