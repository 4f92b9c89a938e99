import { bubblingStones } from "../../../sheets/templates/bubbling-stones.js";
import { demoOf } from "../../support/changed-demo.js";
import type { FailingCase } from "./case.js";

export const bubblingDemo = demoOf(bubblingStones, "bubbling-stones.json");
const { demoRows, firstRow } = bubblingDemo;

const urn = { kind: "urn", urn_weight: 240, urn_across: 16, urn_water: 24 };

/** A check of stones and urns, and the change of their demo that must make it say no. */
export const bubblingCases: FailingCase[] = [
  ["some_stones", () => ({ bubblers: [] })],
  ["bubblers.name_unique", () => firstRow("bubblers", { name: "Low stone" })],
  ["bubblers.urn_given", () => firstRow("bubblers", { kind: "urn" })],
  ["bubblers.look_for_urn", () => firstRow("bubblers", { ...urn, look: "jet" })],
  ["bubblers.has_line", () => ({ pipe_lines: demoRows("pipe_lines").slice(0, 2) })],
  ["bubblers.pipe_fits", () => firstRow("bubblers", { hole: 2 })],
  ["bubblers.hole_leaves_stone", () => firstRow("bubblers", { hole: 8 })],
  ["bubblers.hole_tested", () => firstRow("bubblers", { hole: 1.5 })],
  ["bubblers.bears", () => firstRow("bubblers", { base: "crates" })],
  ["bubblers.bears", () => ({ ground_bearing: 1000 })],
  ["bubblers.stands_firm", () => firstRow("bubblers", { wide: 10 })],
  ["bubblers.splash_kept", () => firstRow("bubblers", { look: "jet" })],
  // what runs down splashes too
  ["bubblers.splash_kept", () => firstRow("bubblers", { along: 1 })],
  ["bubblers.vault_free", () => firstRow("bubblers", { along: 5.5, across: 1 })],
  ["bubblers.apart", () => firstRow("bubblers", { along: 4 })],
  ["crates_bear", () => ({ crate_bearing_known: false })],
  ["pipe_lines.urn_kept", () => firstRow("bubblers", urn)],
  ["pipe_lines.height_agrees", () => firstRow("pipe_lines", { measured_height: 9 })],
  ["stone_price_in_band", () => ({ price_per_stone_most: 2000 })],
  ["lift_matches_level", () => ({ rim_above_water: 0 })],
  ["basin_holds", () => ({ days_between_fills: 60 })],
  // a basin longer than all splash asks for
  ["basin_not_oversize", () => ({ basin_length: 14 })],
  ["machine_lifts", () => ({ working_radius: 14, machine_choice: "micro" })],
];
