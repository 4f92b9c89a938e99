import {
  area,
  calc,
  check,
  count,
  decide,
  density,
  length,
  lines,
  office,
  percent,
  published,
  smallLength,
  table,
  text,
  tons,
  yesno,
} from "../../../engine/template/index.js";
import { itemCode } from "../../vocabulary/item-code.js";
import { soilVolume } from "../../vocabulary/quantities.js";
import { capacity } from "../capacity.js";

const practice = "common practice, no source";

export const wallRules = lines("Rules and totals of walls", {
  wall_stone_code: itemCode("Wall stone item code", { default: "stone-wall" }),
  wall_block_code: itemCode("Wall block item code", { default: "wall-block" }),
  wall_base_code: itemCode("Base gravel item code", { default: "gravel-base" }),
  wall_embed: office(percent, "Wall buried, of its height", {
    default: 0.1,
    least: 0,
    most: 0.5,
    decimals: 0,
    source: practice,
  }),
  wall_embed_least: office(smallLength, "Wall buried, least", {
    default: 6,
    least: 0,
    most: 36,
    source: practice,
  }),
  wall_base_depth: office(smallLength, "Depth of the gravel base", {
    default: 6,
    least: 0,
    most: 36,
    source: practice,
  }),
  wall_base_margin: office(smallLength, "Base margin, each side", {
    default: 6,
    least: 0,
    most: 36,
    source: practice,
  }),
  wall_thickness: office(percent, "Base thickness, of height", {
    note: "Of a dry-laid wall.",
    default: 0.5,
    least: 0.2,
    most: 1.5,
    decimals: 0,
    source: practice,
  }),
  wall_top: office(length, "Top thickness of walls", {
    note: "And the least thickness.",
    default: 1,
    least: 0.25,
    most: 6,
    source: practice,
  }),
  wall_voids: office(percent, "Voids in dry-laid stone", {
    default: 0.25,
    least: 0,
    most: 0.6,
    decimals: 0,
    source: practice,
  }),
  wall_rock_density: office(density, "Solid density of wall stone", {
    default: 165,
    least: 90,
    most: 210,
    source: practice,
  }),
  block_face: office(area, "Face of one block", {
    default: 0.67,
    least: 0.05,
    most: 20,
    decimals: 2,
    source: "an 8 by 12 in face: common practice, no source",
  }),
  block_thickness: office(smallLength, "Thickness of a block", {
    default: 12,
    least: 3,
    most: 60,
    source: practice,
  }),
  permit_height: published(length, "Permit needed over", {
    working: true,
    value: 4,
    source: "IRC R105.2: bottom of footing to top, no load behind; some local law says less",
  }),
  wall_seen: calc(area, "SUMPRODUCT((walls.height>0)*walls.length*walls.height)", "Wall face above ground", {
    working: true,
  }),
  wall_face: calc(area, "SUM(walls.face)", "Total wall face", {
    note: "Buried part included.",
    strong: true,
  }),
  wall_stone: calc(tons, "SUM(walls.stone_weight)", "Wall stone", { strong: true }),
  wall_blocks: calc(count, "SUM(walls.blocks)", "Wall blocks", { strong: true }),
  walls_to_permit: calc(count, "SUMPRODUCT((walls.needs_permit=TRUE)*1)", "Walls with permit and engineer", {
    working: true,
  }),
  wall_base: calc(soilVolume, "SUM(walls.base)", "Base gravel, as laid", { strong: true }),
});

export const wallTable = table(
  "walls",
  "Walls",
  { rows: capacity.walls, filled: "height>0" },
  {
    name: decide(text, "Wall"),
    length: decide(length, "Length", { again: true, least: 0.5, most: 1000 }),
    height: decide(length, "Height above ground", { again: true, least: 0.25, most: 20 }),
    kind: decide(text, "Built of", { default: "stone", choices: ["stone", "block"] }),
    cut_bank: decide(yesno, "Stands in a cut bank", {
      default: false,
      note: "Then the bank behind it is dug as high as the wall, and somebody works under it.",
    }),
    loaded: decide(yesno, "Load behind the wall", {
      note: "A slope, a drive or a building.",
      default: false,
    }),
    bank_above: decide(length, "Bank above its top", {
      default: 0,
      least: 0,
      most: 30,
      note: "Height of the ground that rises behind the wall within twice the wall's height. It counts as height of the wall.",
    }),
    arranged: decide(yesno, "Permit and engineer arranged", { default: false }),
    buried: calc(length, "MAX(wall_embed_least,wall_embed*height)", "Buried"),
    code_height: calc(length, "height+buried", "Height by the code", {
      note: "From its foot to its top.",
    }),
    needs_permit: calc(
      yesno,
      "OR(ROUND(code_height+bank_above-permit_height,9)>0,loaded)",
      "Permit and engineer needed",
    ),
    dug: calc(length, "buried+wall_base_depth+IF(cut_bank,height,0)", "Depth of its dig"),
    face: calc(area, "length*(height+buried)", "Face"),
    thickness: calc(
      length,
      'IF(kind = "block", block_thickness, MAX(wall_top, wall_thickness * (height + buried)))',
      "Thickness at the foot",
    ),
    base: calc(soilVolume, "length*(thickness+2*wall_base_margin)*wall_base_depth", "Base gravel"),
    stone_weight: calc(
      tons,
      'IF(kind = "stone", face * (thickness + wall_top) / 2 * (1 - wall_voids) * wall_rock_density, 0)',
      "Stone",
    ),
    blocks: calc(
      count,
      'IF(kind = "block", WHOLE_UP(length / 1[ft] * ((height + buried) / 1[ft]) / MAX(0.01, block_face / 1[ft²])), 0)',
      "Blocks",
    ),
    permitted: check(
      "OR(arranged,NOT(needs_permit))",
      "{name} is {code_height} high with {bank_above} of bank on it; over {permit_height}, or loaded, it needs permit and engineer. Set arranged on sheet Decisions.",
      { label: "Wall without engineer" },
    ),
  },
);

export const wallLines = table(
  "wall_lines",
  "Walls in words",
  { working: true, rows: wallTable.rows, beside: "walls", filled: "height>0" },
  {
    said: calc(
      text,
      "~{name}: {kind}, {length} long, {height} above ground, {buried|up} buried, {thickness|up} thick at the foot",
      "For the crew",
      { reader: "crew" },
    ),
  },
);
