import { firstRow } from "../../support/changed-demo.js";
import { asItIs, type FailingCase, pasted, priced } from "./case.js";

const slab = { name: "slab", stone: "lip stones", covers: "lips", share: 1 };
const rimOnTop = {
  ...firstRow("falls", { lip_type: "pot rim", look: "rim film", width: 1.5 }),
  pots: [{ name: "urn", level: 1 }],
};
const wetMonths = Array.from({ length: 12 }, () => ({ rain_days: 28 }));

export const groundCases: FailingCase[] = [
  // basin
  ["full_line_in_hole", () => ({ basin_depth: 2, basin_freeboard: 30 })],
  ["vault_fits", () => ({ vault_length: 120, vault_width: 120 })],
  ["crates_fit", () => ({ crate_height: 60 })],
  ["fill_keeps_up", () => ({ fill_flow: 0.01 })],
  ["weather_of_place", () => ({ weather_is_local: false })],
  ["weather_of_place", () => ({ storm_is_local: false })],
  ["inputs_right_walk", asItIs, pasted("weather_place", "nowhere")],
  [
    "weather_of_place",
    () => ({ weather_place: "dry-flat" }),
    priced("places", "dry-flat", { looked_up: null }),
  ],
  // liner and stone
  [
    "liner_not_wasted",
    () => ({ liner_rolls: [{ width: 50, roll_length: 300, whole_rolls: true }] }),
  ],
  ["liner_carried", () => ({ people_to_carry: 1 })],
  ["roll_chosen", () => ({ one_roll: 6 })],
  ["stone_places.bed_holds_stone", () => ({ bed_stone_depth: 2 })],
  ["stone_places.measured", () => ({ stone_places: [{ ...slab, width: 0, thickness: 0 }] })],
  ["stone_in_band", () => ({ stone_places: [{ ...slab, share: 0.1 }] })],
  // pots
  ["pots.has_rim", () => ({ pots: [{ name: "urn", level: 1 }] })],
  ["pots.film_whole", () => ({ ...rimOnTop, film_least: 20 })],
  ["pots_moved", () => ({ pots: [{ name: "urn", level: 1, empty: 9000 }] })],
  // access, labor and rain
  ["method_fits", () => ({ access_steps: 2, method_choice: "machine" })],
  ["crew_moves_stone", () => ({ gate_width: 3 })],
  [
    "hand_without_machine",
    () => ({ gate_width: 3, additional_tasks: [{ task: "planting", hours: 4, machine: 2 }] }),
  ],
  [
    "additional_tasks.fits",
    () => ({ additional_tasks: [{ task: "planting", hours: 1, machine: 2 }] }),
  ],
  ["one_machine", () => ({ crew_size: 12, tasks: [{ machine_share: 1 }] })],
  ["rain_table_covers", () => ({ rain_months: wetMonths, rain_stops_work: 1 })],
];
