import {
  area,
  areaWeight,
  type CellDeclaration,
  calc,
  check,
  count,
  decide,
  flow,
  head,
  length,
  percent,
  smallLength,
  table,
  text,
  walk,
  weight,
  yesno,
} from "../../../engine/template/index.js";
import { itemCode } from "../../vocabulary/item-code.js";
import { flowPerWidth, waterVolume } from "../../vocabulary/quantities.js";
import { capacity } from "../capacity.js";
import { nameUnique } from "../name-unique.js";
import { practice } from "../rates.js";

const kinds = ["drilled stone", "urn"] as const;
const bases = ["crates", "piers"] as const;
const drillings = ["done", "by us"] as const;

const ofLook = (column: string) => `PICK(bubbler_looks.${column},bubbler_looks.name,look)`;
const working = { working: true } as const;

/** A row counts once it is measured, and what it does is told. */
export const stoneInUse = "AND(tall>0,wide>0,deep>0,LEN(kind)>0,LEN(look)>0,LEN(rock)>0,LEN(base)>0)";

/** What stands, and what is wanted of it. */
const inputs: Record<string, CellDeclaration> = {
  name: walk(text, "Stone or urn", { default: "Stone" }),
  kind: walk(text, "Kind", { default: kinds[0], choices: kinds }),
  tall: walk(smallLength, "Height", {
    again: true,
    least: 4,
    most: 144,
    decimals: 0,
    note: "As it will stand, base apart.",
  }),
  wide: walk(smallLength, "Width", {
    default: 18,
    least: 4,
    most: 144,
    decimals: 0,
    note: "Along the basin.",
  }),
  deep: walk(smallLength, "Depth", {
    default: 18,
    least: 4,
    most: 144,
    decimals: 0,
    note: "Across the basin.",
  }),
  look: walk(text, "Look", { again: true, default: "low dome", choices: "bubbler_looks.name" }),
  hole: decide(smallLength, "Drill hole", {
    default: 2.5,
    least: 0.5,
    most: 12,
    note: "Across its opening at the top, where the water wells up; the pipe ends below it.",
  }),
  drilled: decide(text, "Drilling", {
    default: drillings[0],
    choices: drillings,
    note: "Done: it comes drilled.",
  }),
  rock: decide(text, "Rock", { default: "field stone", choices: "rocks.name" }),
  fullness: decide(percent, "Share of its box", {
    default: 0.7,
    least: 0.3,
    most: 1,
    decimals: 0,
    note: "A column about 80%, an angular boulder 70%, a round one 52% (an ellipsoid's pi/6). Where in doubt, more.",
    source: practice,
  }),
  urn_weight: decide(weight, "Urn's weight, empty", { optional: true, least: 1, most: 20000 }),
  urn_across: decide(smallLength, "Urn, across its rim", { optional: true, least: 2, most: 120 }),
  urn_water: decide(smallLength, "Urn, depth of water", { optional: true, least: 0, most: 144 }),
  code: itemCode("Item code", { asked: "decision", default: "stone-drilled" }),
  base: decide(text, "Base", {
    default: bases[0],
    choices: bases,
    note: "Crates: it stands on the stone over them. Piers: of blocks, from the basin's bottom.",
  }),
  piers: decide(count, "Piers under it", { default: 1, least: 1, most: 9, whole: true }),
  foot_share: decide(percent, "Foot, share of box", {
    default: 0.7,
    least: 0.1,
    most: 1,
    decimals: 0,
    note: "Of width times depth: what bears on its base.",
    source: practice,
  }),
  raised: decide(smallLength, "Foot over rim", { default: 0, least: 0, most: 60 }),
  pinned: decide(yesno, "Pinned or footed", { default: false, note: "So that it cannot tip: by whom, its plan says." }),
  along: decide(length, "Middle, along the basin", {
    optional: true,
    least: 0,
    most: 100,
    note: "From the end of the basin where its crates begin. Blank: spread evenly.",
  }),
  across: decide(length, "Middle, across the basin", {
    optional: true,
    least: 0,
    most: 60,
    note: "From the side of the vault. Blank: in the middle.",
  }),
};

const water: Record<string, CellDeclaration> = {
  is_urn: calc(yesno, `kind="${kinds[1]}"`, "Urn", working),
  used: calc(count, "1", "In use", working),
  order: calc(count, "above.order+1", "Place in the row", { working: true, first: "1", blank: "above.order" }),
  opening: calc(smallLength, "IF(is_urn,urn_across,hole)", "Opening", working),
  over: calc(smallLength, `IF(is_urn,0,${ofLook("over")})`, "Water over opening"),
  per_rim: calc(flowPerWidth, `IF(is_urn,${ofLook("per_rim")},0)`, "Flow over its rim", { working: true, zero: "–" }),
  law: calc(
    text,
    'IF(is_urn,"over its rim",IF(over<=0.37*hole,"as a weir",IF(over<1.4*hole,"between weir and jet","as a jet")))',
    "How it flows",
  ),
  look_flow: calc(flow, "IF(is_urn,per_rim*PI()*urn_across,BUBBLE_FLOW(hole,over))", "Flow of its look", {
    decimals: 1,
  }),
  design_flow: calc(flow, "look_flow*(1+flow_doubt)", "Design flow", { strong: true, decimals: 1 }),
  lift: calc(head, "rim_above_water+raised+tall+over", "Water's top over basin water"),
  film: calc(
    smallLength,
    (row) => `FILM(INDEX(pipe_lines.actual_flow,${row}),PI()/2*(wide+deep),water_viscosity)`,
    "Smooth film on its sides",
    { working: true, decimals: 3, note: "As a round stone of the same width and depth is wet all around." },
  ),
  water_running: calc(waterVolume, "film*film_roughness*PI()/2*(wide+deep)*tall", "Water on its sides", {
    decimals: 2,
  }),
  urn_surface: calc(area, "IF(is_urn,0.7854*urn_across^2,0)", "Urn's water surface", { working: true, decimals: 1 }),
  urn_deep: calc(smallLength, "IF(is_urn,urn_water,0)", "Urn's depth counted", working),
  water_standing: calc(waterVolume, "urn_surface*urn_deep", "Water in the urn", {
    decimals: 1,
    note: "As if its sides were upright.",
  }),
};

const stands: Record<string, CellDeclaration> = {
  weighs: calc(
    weight,
    "IF(is_urn,urn_weight,STONE_WEIGHT(wide,deep,tall,fullness,PICK(rocks.density,rocks.name,rock)))",
    "Weight",
    { strong: true, note: "Of a stone, its drill hole left in." },
  ),
  full: calc(weight, "weighs+water_standing*62.4[lb/ft³]", "Weight, full", working),
  foot: calc(area, "foot_share*wide*deep", "Foot", { working: true, decimals: 2 }),
  on_piers: calc(yesno, `base="${bases[1]}"`, "Stands on piers", working),
  pier_count: calc(count, "IF(on_piers,piers,0)", "Piers counted", working),
  bearing_area: calc(area, "IF(on_piers,pier_count*pier_side^2,foot)", "Bearing area", { working: true, decimals: 2 }),
  pier_weight: calc(weight, "pier_count*pier_side^2*basin_depth*140[lb/ft³]", "Weight of its piers", {
    working: true,
    note: "Concrete block, solid or filled: ‹140 lb/ft³|2240 kg/m³›, common practice, no source.",
  }),
  pressure: calc(
    areaWeight,
    "IF(bearing_area>0,(full*(1+density_doubt)+pier_weight)/bearing_area,0)",
    "Load on its base",
    { decimals: 0, note: "With the allowance for stone weight, and the piers' own weight at their foot." },
  ),
  bears_most: calc(areaWeight, "IF(on_piers,ground_bearing,crate_bearing)", "Load allowed", { decimals: 0 }),
  pier_plan: calc(area, "pier_count*pier_side^2", "Basin taken by its piers", { working: true, decimals: 2 }),
  pier_places: calc(
    count,
    "pier_count*PLACES_TAKEN(pier_side,pier_side,crate_along,crate_across)",
    "Crate places taken",
    working,
  ),
  pier_blocks: calc(
    count,
    "pier_count*blocks_a_course*WHOLE_UP((basin_depth+raised)/MAX(0.1[in],pier_course))",
    "Blocks of its piers",
    working,
  ),
  drill_length: calc(length, `IF(AND(NOT(is_urn),drilled="${drillings[1]}"),tall,0[in])`, "Length to drill", working),
  middle: calc(length, "IF(ISBLANK(along),basin_length*(order-0.5)/MAX(1,stones_counted),along)", "Middle, along"),
  aside: calc(length, "IF(ISBLANK(across),basin_width/2,across)", "Middle, across"),
  edge: calc(length, "MIN(middle,basin_length-middle,aside,basin_width-aside)", "Nearest edge of basin", {
    strong: true,
  }),
  fall: calc(length, "raised+tall+over", "Height of its water", working),
  drops: calc(percent, ofLook("drops"), "Throw share of drops", working),
  thrown: calc(length, "drops*THROW(JET_SPEED(over),fall)", "Throw of its drops", working),
  drifted: calc(length, "IF(drops>0,drift_share*DRIFT(wind_at_water,fall),0)", "Drift of its drops", working),
  foot_spread: calc(length, "MAX(wide,deep)/2+foot_splash", "Splash at its foot", working),
  splash: calc(length, "MAX(foot_spread,thrown+drifted)", "Splash radius", { strong: true, note: "From its middle." }),
  near: calc(length, "middle-splash", "Splash, near end", working),
  far: calc(length, "middle+splash", "Splash, far end", working),
};

const outside = (row: number) =>
  `IF(INDEX(pipe_lines.bore,${row})>0,PICK(pipe_sizes.outside,pipe_sizes.size,INDEX(pipe_lines.pipe_size,${row})),0)`;

/** As far as two stand apart in the row's two directions, against half their sizes; itself is one of them. */
const together =
  "SUMPRODUCT((bubblers.used>0)*(4*(bubblers.middle-middle)^2<(bubblers.wide+wide)^2)*(4*(bubblers.aside-aside)^2<(bubblers.deep+deep)^2))";

const checks: Record<string, CellDeclaration> = {
  name_unique: nameUnique("bubblers", "bubblers.used>0"),
  urn_given: check(
    "OR(NOT(is_urn),AND(urn_weight>0,urn_across>0,urn_water>0))",
    "{name} is an urn without sizes: enter urn_weight, urn_across and urn_water on sheet Decisions.",
    { label: "Urn without sizes" },
  ),
  look_for_urn: check(
    "OR(NOT(is_urn),per_rim>0)",
    "{name}: the look {look} has no flow over an urn's rim. Choose another look in bubblers on sheet Walk.",
    { label: "Look not for an urn" },
  ),
  has_line: check(
    (row) => `INDEX(pipe_lines.bore,${row})>0`,
    "{name} has no pipe: choose the pipe size of its line, in the same row of pipe_lines, on sheet Decisions.",
    { label: "Stone without a line" },
  ),
  pipe_outside: calc(smallLength, (row) => outside(row), "Outside of its pipe", { working: true, decimals: 2 }),
  pipe_fits: check(
    "OR(is_urn,ROUND(pipe_outside+2*hole_clearance-hole,6)<=0)",
    "{name}: a pipe {pipe_outside} across outside, with {hole_clearance} around it, does not go through a hole of {hole}. Drill wider, or choose a smaller pipe.",
    { label: "Pipe too large for hole" },
  ),
  hole_leaves_stone: check(
    "OR(is_urn,hole<=hole_most*MIN(wide,deep))",
    "{name}: a hole of {hole} takes over {hole_most} of its lesser side. Choose a thicker stone or a smaller hole in bubblers.",
    { label: "Hole too wide for stone" },
  ),
  hole_tested: check(
    "OR(is_urn,AND(hole>=tested_least,hole<=tested_most))",
    "{name}: flow over a hole of {hole} is not published, only from {tested_least} to {tested_most}. Measure it before the pump is bought.",
    { label: "Hole outside tested sizes", level: "look" },
  ),
  bears: check(
    "ROUND(pressure-bears_most,6)<=0",
    "{name} loads its base with {pressure|0}, but {bears_most|0} are allowed. Set its base to piers, add piers, or choose a lighter stone in bubblers.",
    { label: "Base overloaded" },
  ),
  stands_firm: check(
    "OR(pinned,ROUND(tall-tip_ratio*MIN(wide,deep)*SQRT(foot_share),6)<=0)",
    "{name} is {tall|0} tall on a base {foot|2} wide: it may tip. Have it pinned and set pinned in bubblers on sheet Decisions.",
    { label: "Stone may tip over" },
  ),
  splash_kept: check(
    "ROUND(splash-edge,6)<=0",
    "{name} splashes {splash} far, but the basin ends {edge} from its middle. Enlarge the basin, move the stone, or choose a quieter look.",
    { label: "Splash beyond the basin" },
  ),
  vault_free: check(
    "OR(vaults_needed=0,middle+wide/2<=vault_near,middle-wide/2>=vault_far,aside-deep/2>=vault_side,aside+deep/2<=crate_gap)",
    "{name} stands over the pump vault, which must open. Move it by along and across in bubblers on sheet Decisions.",
    { label: "Stone over the vault" },
  ),
  apart: check(
    `${together}<2`,
    "{name} and another one stand in the same place. Move one by along and across in bubblers on sheet Decisions.",
    { label: "Stones too close" },
  ),
};

/** One row for each stone or urn; its line of pipe stands in the same row of the lines. */
export const bubblersTable = table(
  "bubblers",
  "Stones and urns",
  {
    section: "Stones and urns",
    rows: capacity.lines,
    opening: 1,
    filled: stoneInUse,
    note: "Each has a line of its own, in the same row of the pipe lines. Flow over a drill hole by the published laws of upright pipes, over an urn's rim by the table of looks.",
  },
  { ...inputs, ...water, ...stands, ...checks },
);
