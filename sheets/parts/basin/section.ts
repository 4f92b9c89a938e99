import { type Block, calc, chart, length, lines, table, text } from "../../../engine/template/index.js";
import { planRatio } from "./drawing-sizes.js";

/** Layers of crates that the section shows at most. */
const layers = 6;

/** Corners along the basin: near wall, near wall, far wall, far wall. */
const outline = table(
  "section_points",
  "Basin in section, levels",
  { rows: 4 },
  {
    along: calc(length, (row) => (row < 3 ? "0[ft]" : "basin_length"), "Along"),
    rim: calc(length, (row) => (row === 1 || row === 4 ? "basin_depth" : "0[ft]"), "Rim and bottom"),
    full: calc(length, "level_at_rest", "Full, pump off"),
    running: calc(length, "level_running", "Running"),
    lowest: calc(length, "pump_minimum_water", "Lowest for pump"),
  },
);

/** The ground from the uphill side over the basin. */
const ground = table(
  "section_ground",
  "Basin in section, ground",
  { rows: 5 },
  {
    along: calc(
      length,
      (row) => ["section_near", "0[ft]", "0[ft]", "basin_length", "section_ground_far"][row - 1] ?? "0[ft]",
      "Along",
    ),
    up: calc(length, (row) => (row < 3 ? "basin_depth+ground_over_rim" : "basin_depth"), "Up"),
  },
);

/** Round the crates, then to and fro between their layers. */
const crates = table(
  "section_crates",
  "Basin in section, crates",
  { rows: 5 + 2 * layers },
  {
    along: calc(
      length,
      (row) => {
        const far = row <= 5 ? row === 2 || row === 3 : row % 4 === 3 || row % 4 === 0;
        return far ? "crates_far" : "crate_gap";
      },
      "Along",
    ),
    up: calc(
      length,
      (row) => {
        if (row <= 5) return row === 3 || row === 4 ? "crate_top" : "0[ft]";
        return `MIN(${Math.floor((row - 4) / 2)},crate_layers)*crate_height`;
      },
      "Up",
    ),
  },
);

const vault = table(
  "section_vault",
  "Basin in section, vault",
  { rows: 4 },
  {
    along: calc(length, (row) => (row < 3 ? "vault_near" : "vault_far"), "Along"),
    up: calc(length, (row) => (row === 1 || row === 4 ? "0[ft]" : "vault_top"), "Up"),
  },
);

/** The least distance between two names, as a share of the drawing's height. */
const apart = "0.2*section_top";
const below = (level: string, before: string) => `MIN(${level},${before}-${apart})`;

/** What stands beside the levels, outside the far wall, in feet and inches: one below another, however near they are. */
const names = lines("Basin in section, names", {
  section_ground_far: calc(length, "1.12*basin_length", "Ground, far end"),
  section_names: calc(length, "1.02*basin_length", "Names beside far wall"),
  full_name_up: calc(length, "level_at_rest", "Name of full line"),
  running_name_up: calc(length, below("level_running", "full_name_up"), "Name of running level"),
  float_name_up: calc(length, below("float_level", "running_name_up"), "Name of float"),
  lowest_name_up: calc(length, below("pump_minimum_water", "float_name_up"), "Name of lowest level"),
  lowest_below_rim: calc(length, "basin_depth-pump_minimum_water", "Lowest level below rim"),
  full_said: calc(text, "~Full, {basin_freeboard} below rim", "Full in words", { reader: "crew" }),
  running_said: calc(text, "~Running, {running_below_rim|up}", "Running in words", { reader: "crew" }),
  lowest_said: calc(text, "~Pump minimum, {lowest_below_rim}", "Lowest in words", { reader: "crew" }),
  float_said: calc(text, "~Float, {float_below_rim|up}", "Float in words", { reader: "crew" }),
});

/** The basin cut along its length; its heights are drawn larger, so that the levels stand apart. */
export const section = chart(
  "Basin in section (heights not to scale)",
  "Along the basin",
  "Above basin bottom",
  [
    { label: "Basin", x: "section_points.along", y: "section_points.rim", marks: "line", look: "heavy" },
    { label: "Ground", x: "section_ground.along", y: "section_ground.up", marks: "line", look: "dashed" },
    { label: "Crates", x: "section_crates.along", y: "section_crates.up", marks: "line", look: "fine" },
    { label: "Vault", x: "section_vault.along", y: "section_vault.up", marks: "line", look: "plain" },
    {
      label: "Full",
      x: "section_points.along",
      y: "section_points.full",
      marks: "line",
      look: "long dashes",
      legend: false,
    },
    {
      label: "Running",
      x: "section_points.along",
      y: "section_points.running",
      marks: "line",
      look: "broad",
      legend: false,
    },
    {
      label: "Lowest",
      x: "section_points.along",
      y: "section_points.lowest",
      marks: "line",
      look: "dotted",
      legend: false,
    },
    { label: "Float", x: "vault_middle", y: "float_level", marks: "points", legend: false },
    { label: "Full", x: "section_names", y: "full_name_up", marks: "names", says: "full_said", at: "right" },
    { label: "Running", x: "section_names", y: "running_name_up", marks: "names", says: "running_said", at: "right" },
    { label: "Float", x: "section_names", y: "float_name_up", marks: "names", says: "float_said", at: "right" },
    { label: "Lowest", x: "section_names", y: "lowest_name_up", marks: "names", says: "lowest_said", at: "right" },
    { label: "Scale", x: "section_far", y: "section_top", marks: "frame" },
  ],
  {
    alt: "The basin cut along its length, heights not to scale: rim and bottom, crates, vault, and the levels of the water when full, while running and at the lowest that the pump allows, with the float.",
    ratio: planRatio,
    lines: 24,
  },
);

export const sectionPoints: readonly Block[] = [outline, ground, crates, vault, names];
