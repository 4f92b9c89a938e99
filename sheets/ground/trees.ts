import {
  calc,
  check,
  input,
  length,
  lines,
  number,
  smallLength,
  table,
  text,
  yesno,
} from "../../engine/template/index.js";

const practice = "common practice, no source";

export const treeRules = lines("Rules for trees that stay", {
  root_radius_rule: input(number, "Root zone: feet of radius to an inch of trunk", {
    default: 1,
    least: 0.5,
    most: 2,
    note: "In metres and centimetres, 1 means 12 times the trunk's diameter.",
    source: "arborists' critical root zone (from memory)",
  }),
  trunk_clear: input(length, "No fill nearer to the trunk than", {
    default: 3,
    least: 0,
    most: 20,
    source: practice,
  }),
  root_fill: input(smallLength, "Fill allowed over the root zone beyond that", {
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
    rows: 6,
    filled: "trunk > 0",
    note: "Distance is from the trunk to the nearest fill. Where more fill is planned than the roots stand, a dry-laid wall holds it back: put that wall into the table of walls.",
  },
  {
    name: input(text, "Tree"),
    trunk: input(smallLength, "Trunk across, at breast height", {
      least: 1,
      most: 120,
      decimals: 0,
    }),
    distance: input(length, "Distance to the fill", { least: 0, most: 500 }),
    fill_planned: input(length, "Fill planned", { default: 0, least: 0, most: 20 }),
    wall_built: input(yesno, "A wall is in the table", { default: false }),
    root_radius: calc(length, "trunk * 12 * root_radius_rule", "Radius of the root zone"),
    fill_allowed: calc(
      length,
      "IF(distance >= root_radius, fill_planned, IF(distance < trunk_clear, 0, MIN(fill_planned, root_fill)))",
      "Fill allowed there",
    ),
    wall_needed: calc(yesno, "fill_planned > fill_allowed", "Wall needed"),
    wall_height: calc(length, "IF(fill_planned > fill_allowed, fill_planned, 0)", "Wall height"),
    wall_length: calc(
      length,
      "IF(fill_planned > fill_allowed, 2 * SQRT(MAX(0, root_radius ^ 2 - distance ^ 2)), 0)",
      "Wall length: straight across the root zone",
    ),
    kept: check(
      "OR(NOT(wall_needed), wall_built)",
      "{name}: {fill_planned} of fill at {distance}, where {fill_allowed} is allowed within {root_radius}: put a wall {wall_height} high and {wall_length} long into the table of walls, or move the fill.",
      { label: "Roots are kept" },
    ),
  },
);

export const treeLines = table(
  "tree_lines",
  "Trees in words",
  { rows: 6, beside: "trees", filled: "trunk > 0" },
  {
    said: calc(
      text,
      "~{name}: no fill within {trunk_clear}, at most {root_fill} within {root_radius} of the trunk",
      "For the crew",
    ),
  },
);
