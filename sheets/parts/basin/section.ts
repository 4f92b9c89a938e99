import { type Block, calc, chart, length, lines, table, text } from "../../../engine/template/index.js";
import { sectionRatio } from "./drawing-sizes.js";

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
      (row) => ["section_near", "0[ft]", "0[ft]", "basin_length", "section_far"][row - 1] ?? "0[ft]",
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

/** What stands beside the levels, in feet and inches. */
const names = lines("Basin in section, names", {
  section_left: calc(length, "0.22*basin_length", "Names at the left"),
  section_middle: calc(length, "0.45*basin_length", "Names in the middle"),
  lowest_up: calc(length, "pump_minimum_water", "Lowest in drawing"),
  float_name_up: calc(length, "float_level+0.03*section_top", "Name of float"),
  full_said: calc(text, "~Full, {basin_freeboard|0} below rim", "Full in words", { reader: "crew" }),
  running_said: calc(text, "~Running, {running_below_rim|0} below rim", "Running in words", { reader: "crew" }),
  lowest_said: calc(text, "~Lowest for pump, {pump_minimum_water|0}", "Lowest in words", { reader: "crew" }),
  float_said: calc(text, "~Float, {float_below_rim|0} below rim", "Float in words", { reader: "crew" }),
});

/** The basin cut along its length, to scale. */
export const section = chart(
  "Basin in section",
  "Along the basin",
  "Above basin bottom",
  [
    { label: "Basin", x: "section_points.along", y: "section_points.rim", marks: "line", look: "heavy" },
    { label: "Ground", x: "section_ground.along", y: "section_ground.up", marks: "line", look: "dashed" },
    { label: "Crates", x: "section_crates.along", y: "section_crates.up", marks: "line", look: "fine" },
    { label: "Vault", x: "section_vault.along", y: "section_vault.up", marks: "line", look: "plain" },
    { label: "Full", x: "section_points.along", y: "section_points.full", marks: "line", look: "long dashes" },
    { label: "Running", x: "section_points.along", y: "section_points.running", marks: "line", look: "broad" },
    { label: "Lowest", x: "section_points.along", y: "section_points.lowest", marks: "line", look: "dotted" },
    { label: "Float", x: "vault_middle", y: "float_level", marks: "points" },
    { label: "Float", x: "vault_middle", y: "float_name_up", marks: "names", says: "float_said", at: "above" },
    { label: "Full", x: "section_left", y: "level_at_rest", marks: "names", says: "full_said", at: "above" },
    { label: "Running", x: "section_middle", y: "level_running", marks: "names", says: "running_said", at: "below" },
    { label: "Lowest", x: "section_left", y: "lowest_up", marks: "names", says: "lowest_said", at: "above" },
    { label: "Scale", x: "section_far", y: "section_top", marks: "frame" },
  ],
  {
    alt: "The basin cut along its length, to scale: rim and bottom, crates, vault, and the levels of the water when full, while running and at the lowest that the pump allows, with the float.",
    ratio: sectionRatio,
    lines: 24,
  },
);

export const sectionPoints: readonly Block[] = [outline, ground, crates, vault, names];
