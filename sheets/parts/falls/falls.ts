import {
  area,
  type Block,
  calc,
  check,
  count,
  decide,
  flow,
  head,
  length,
  lines,
  office,
  paragraphs,
  percent,
  smallLength,
} from "../../../engine/template/index.js";
import { looks, sheetThicknessRatio } from "../../tables/lips.js";
import { waterVolume } from "../../vocabulary/quantities.js";
import { practice } from "../rates.js";
import { benchmark, elevations } from "./elevations.js";
import { fallsTable } from "./falls-table.js";
import { levelsTable } from "./levels-table.js";

/** How much water each fall gets, and how it goes over its lip. */
export const fallsBlocks: readonly Block[] = [
  fallsTable,
  looks,
  lines("Rules", {
    least_flow_share: office(percent, "Least share of design flow", {
      default: 0.85,
      least: 0.1,
      most: 1,
      source: "office rule",
    }),
    most_flow_share: office(percent, "Largest share of design flow", {
      default: 1.3,
      least: 1,
      most: 5,
      source: "office rule",
    }),
    sheet_thickness_ratio: sheetThicknessRatio,
    rim_above_water: decide(smallLength, "Stream end above basin water", {
      section: "Basin",
      default: 10,
      least: 0,
      most: 60,
      note: "Over the basin water while running: freeboard, and what the level falls when the stream fills. The pump lifts this too. Common practice, no source.",
    }),
  }),
  levelsTable,
  benchmark,
  elevations,
  lines("All falls", {
    falls_design_flow: calc(flow, "SUM(falls.design_flow)", "Design flow, all lips", {
      note: "Lip by lip: the same water passes one level after another, so that the pump brings less.",
    }),
    total_drop: calc(head, "MAX(levels.height)", "Top water above basin", {
      strong: true,
    }),
    falls_built: calc(count, "SUMPRODUCT((levels.lip_built>0)*1)", "Falls to build", {
      note: "Lips of one level are one fall: they share its set-up.",
    }),
    lip_length: calc(length, "SUM(falls.lip_built)", "Lip length"),
    fall_face: calc(area, "SUMPRODUCT(falls.lip_built,falls.drop_counted)", "Fall face", {
      note: "Width times drop, lip by lip.",
    }),
    shoulder_height: calc(length, "2*SUMPRODUCT((levels.lip_built>0)*levels.drop)", "Shoulder height, both sides", {
      working: true,
    }),
    back_wall_share: decide(percent, "Back wall, of fall face", {
      default: 1,
      least: 0,
      most: 3,
      decimals: 0,
      note: "Stone behind the liner that holds the bank up; 0 where a fall is cut into firm ground.",
      source: practice,
    }),
    back_wall: calc(area, "fall_face*back_wall_share", "Back wall", { working: true }),
    lip_water: calc(waterVolume, "SUM(falls.water_in_air)", "Water in the air, all", { working: true }),
    some_falls: check(
      "falls_design_flow>0",
      "There is no fall: enter at least one on sheet Walk, with its lip width and look.",
      { label: "No falls" },
    ),
  }),
  paragraphs(
    "Notes",
    "Depth and throw follow formulas for straight, level lips. Natural stone is neither: flows are set finally by eye and meter on site.",
    "Standing water drowns small children in a few ‹inches|centimeters›. Depth, fences and covers are for the local code to say; ask the authority before you promise a pool.",
  ),
];
