import {
  calc,
  check,
  count,
  decide,
  length,
  lines,
  number,
  office,
  smallLength,
  table,
  text,
  walk,
  yesno,
} from "../../../engine/template/index.js";
import { capacity } from "../capacity.js";

const practice = "common practice, no source";

export const treeRules = lines("Rules for trees that stay", {
  root_radius_rule: office(number, "Root zone rule", {
    default: 1,
    least: 0.5,
    most: 2,
    note: "1 means 12 times the trunk's diameter.",
    source: "arborists' critical root zone (from memory)",
  }),
  trunk_clear: office(length, "Trunk clearance", {
    default: 3,
    least: 0,
    most: 20,
    source: practice,
  }),
  root_fill: office(smallLength, "Fill limit over roots", {
    default: 3,
    least: 0,
    most: 12,
    source: practice,
  }),
});

export const treeTable = table(
  "trees",
  "Trees that stay",
  {
    rows: capacity.trees,
    filled: "trunk>0",
    note: "Distances are from the trunk to the nearest fill, and to the nearest digging or stripping. Where more fill is planned than the roots stand, a dry-laid wall holds it back: enter that wall on sheet Decisions.",
  },
  {
    name: walk(text, "Tree"),
    trunk: walk(smallLength, "Trunk across, at breast height", { again: true, least: 1, most: 120, decimals: 0 }),
    distance: walk(length, "Distance to the fill", { least: 0, most: 500 }),
    fill_planned: decide(length, "Fill planned", { default: 0, least: 0, most: 20 }),
    dig_distance: walk(length, "Distance to digging", {
      optional: true,
      least: 0,
      most: 500,
    }),
    wall_built: decide(yesno, "Wall built for that fill", { default: false }),
    root_radius: calc(length, "trunk*12*root_radius_rule", "Radius of the root zone"),
    fill_allowed: calc(
      length,
      "IF(distance>=root_radius,MAX(fill_planned,root_fill),IF(distance<trunk_clear,0,root_fill))",
      "Fill allowed",
      { note: "Beyond the root zone, what is planned." },
    ),
    dug_at: calc(length, "IF(ISBLANK(dig_distance),distance,dig_distance)", "Nearest digging"),
    fill_rising: calc(
      length,
      "MIN(MAX(berms.height),MAX(0[ft],root_radius-distance)/MAX(1,berms.steepest))",
      "Berm over its root zone",
      { zero: "–", note: "As high as a berm that begins at that distance has risen where the root zone ends." },
    ),
    wall_needed: calc(yesno, "ROUND(fill_planned-fill_allowed,9)>0", "Wall needed"),
    wall_height: calc(length, "IF(wall_needed,fill_planned,0)", "Wall height", { zero: "–" }),
    wall_length: calc(length, "IF(wall_needed,2*SQRT(MAX(0,root_radius^2-distance^2)),0)", "Wall length", {
      note: "Straight across the root zone.",
    }),
    walls_as_high: calc(
      count,
      "SUMPRODUCT((walls.length>0)*(walls.length>=wall_length-0.05[ft])*(walls.height>=wall_height))",
      "Walls as high and long",
    ),
    kept: check(
      "OR(NOT(wall_needed),AND(wall_built,walls_as_high>0))",
      "{name}: {fill_planned} of fill at {distance}, but its roots stand {fill_allowed}. Enter a wall {wall_height} high, {wall_length} long, in walls on sheet Decisions.",
      { label: "Roots buried" },
    ),
    berm_counted: check(
      "ROUND(fill_rising-MAX(fill_planned,fill_allowed),9)<=0",
      "{name}: a berm {distance} away stands {fill_rising} high over its roots. Enter fill_planned on sheet Decisions.",
      { label: "Berm over roots", level: "look" },
    ),
    uncut: check(
      "dug_at>=root_radius",
      "{name}: digging is planned {dug_at} from the trunk, inside its root zone of {root_radius}. Move it out, and enter dig_distance on sheet Walk.",
      { label: "Roots dug or stripped", level: "look" },
    ),
  },
);

export const treeLines = table(
  "tree_lines",
  "Trees in words",
  { working: true, rows: treeTable.rows, beside: "trees", filled: "trunk>0" },
  {
    said: calc(
      text,
      "~{name}: no fill within {trunk_clear|up}, at most {root_fill|down} within {root_radius|up} of the trunk; no digging or stripping within {root_radius|up} either",
      "For the crew",
      { reader: "crew" },
    ),
    away: calc(
      text,
      "~{name}: {dug_at} from the nearest digging, {distance} from the fill",
      "Distances, for the crew",
      {
        reader: "crew",
      },
    ),
  },
);
