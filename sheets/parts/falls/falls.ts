import {
  type Block,
  calc,
  check,
  flow,
  head,
  input,
  lines,
  paragraphs,
  percent,
  smallLength,
} from "../../../engine/template/index.js";
import { brinkRatio, looks } from "../../tables/lips.js";
import { waterVolume } from "../../vocabulary/quantities.js";
import { fallsTable } from "./falls-table.js";
import { levelsTable } from "./levels-table.js";

/** How much water each fall gets, and how it goes over its lip. */
export const fallsBlocks: readonly Block[] = [
  fallsTable,
  looks,
  lines("Rules", {
    least_flow_share: input(percent, "A fall looks starved below this share of its flow wanted", {
      default: 0.85,
      least: 0.1,
      most: 1,
      source: "office rule",
    }),
    most_flow_share: input(percent, "A fall floods above this share of its flow wanted", {
      default: 1.3,
      least: 1,
      most: 5,
      source: "office rule",
    }),
    sheet_thickness_ratio: brinkRatio,
    rim_above_water: input(smallLength, "The stream ends above the running water of the basin by", {
      default: 10,
      least: 0,
      most: 60,
      note: "Full line below the rim, and what the level falls when the stream fills. The pump lifts this too. Common practice, no source.",
    }),
  }),
  levelsTable,
  lines("All falls", {
    falls_design_flow: calc(flow, "SUM(falls.design_flow)", "Flow wanted over all lips"),
    total_drop: calc(head, "MAX(levels.height)", "Height of the top water above the basin's", {
      strong: true,
    }),
    lip_water: calc(waterVolume, "SUM(falls.water_in_air)", "Water in the air, running"),
    some_falls: check(
      "falls_design_flow>0",
      "There is no fall: enter at least one, with its width and look.",
      { label: "There is a fall" },
    ),
  }),
  paragraphs(
    "Mind",
    "Depth and leap follow formulas for straight, level lips. Natural stone is neither: flows are set finally by eye and meter on site.",
    "Standing water drowns small children in a few ‹inches|centimeters›. Depth, fences and covers are for the local code to say; ask the authority before you promise a pool.",
  ),
];
