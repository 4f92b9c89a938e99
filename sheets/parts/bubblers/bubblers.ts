import {
  area,
  areaWeight,
  type Block,
  calc,
  check,
  count,
  decide,
  flow,
  length,
  lines,
  number,
  office,
  paragraphs,
  percent,
  published,
  smallLength,
  weight,
  yesno,
} from "../../../engine/template/index.js";
import { bubblerLooks } from "../../tables/bubbling.js";
import { itemCode } from "../../vocabulary/item-code.js";
import { waterVolume } from "../../vocabulary/quantities.js";
import { practice } from "../rates.js";
import { bubblersTable } from "./bubblers-table.js";

const section = "Stones and urns";

const rules = lines("Rules of stones and urns", {
  flow_doubt: office(percent, "Allowance on flow", {
    default: 0.15,
    least: 0,
    most: 1,
    decimals: 0,
    note: "The pump is chosen for so much more; the valve takes it away again.",
    source: "the published law of welling up is within 15 %: Bos, Discharge Measurement Structures, 1989",
  }),
  tested_least: published(smallLength, "Least hole tested", {
    working: true,
    value: 2,
    source: "USBR Water Measurement Manual, 2001, figure 14-12: pipes of 2 to 12 in",
  }),
  tested_most: published(smallLength, "Largest hole tested", {
    working: true,
    value: 12,
    source: "USBR Water Measurement Manual, 2001, figure 14-12: pipes of 2 to 12 in",
  }),
  hole_clearance: office(smallLength, "Room around the pipe", {
    default: 0.06,
    least: 0,
    most: 2,
    note: "On each side, for sealant.",
    source: practice,
  }),
  hole_most: office(percent, "Hole, of stone's lesser side", {
    default: 0.35,
    least: 0.05,
    most: 0.8,
    decimals: 0,
    source: practice,
  }),
  film_roughness: office(number, "Water on rough stone, factor", {
    default: 4,
    least: 1,
    most: 50,
    note: "Of a smooth film: hollows and moss hold more.",
    source: practice,
  }),
  crate_bearing: office(areaWeight, "Load that crates bear", {
    default: 500,
    least: 1,
    most: 20000,
    decimals: 0,
    note: "Under a stone's foot, through the stone between. Put in what the maker of your crates states for a load that stays.",
    source: "PLACEHOLDER: no source",
  }),
  crate_bearing_known: office(yesno, "Crate bearing is the maker's", { default: false }),
  ground_bearing: office(areaWeight, "Load that ground bears", {
    default: 1500,
    least: 100,
    most: 12000,
    decimals: 0,
    note: "Under a pier, on the ground below the basin.",
    source: "IRC table R401.4.1: 1,500 lb/ft² for clay and silt (from memory)",
  }),
  pier_side: office(smallLength, "Side of a pier", {
    default: 16,
    least: 6,
    most: 60,
    source: "two 8 by 16 in blocks a course: common practice, no source",
  }),
  pier_course: office(smallLength, "Course of a pier", { default: 8, least: 2, most: 24, source: practice }),
  blocks_a_course: office(count, "Blocks in a course", {
    default: 2,
    least: 1,
    most: 12,
    whole: true,
    source: practice,
  }),
  pier_block_code: itemCode("Item code, pier block", { default: "pier-block" }),
  tip_ratio: office(number, "Height over foot, most", {
    default: 2.5,
    least: 0.5,
    most: 6,
    decimals: 1,
    note: "A taller stone on the same foot is pinned or footed.",
    source: practice,
  }),
  foot_splash: office(length, "Splash at the foot", {
    default: 0.5,
    least: 0,
    most: 5,
    note: "Beyond the stone's side, of water that runs down it.",
    source: practice,
  }),
  drift_share: office(percent, "Drops go with the wind", {
    default: 0.5,
    least: 0,
    most: 1,
    decimals: 0,
    note: "Of the wind's speed, as long as they fall. Large drops less, spray more.",
    source: practice,
  }),
  drilled_a_day: office(length, "Drilled in a day", { default: 6, least: 0.5, most: 100, source: practice }),
});

const totals = lines("All stones and urns", {
  rim_above_water: decide(smallLength, "Basin rim above running water", {
    section: "Basin",
    default: 10,
    least: 0,
    most: 60,
    note: "Freeboard, and what the level falls when the pipes fill. The pump lifts this too. Common practice, no source.",
  }),
  stones_counted: calc(count, "SUM(bubblers.used)", "Stones and urns", { strong: true }),
  urns_counted: calc(count, "SUMPRODUCT((bubblers.is_urn=TRUE)*1)", "Of which urns", { working: true }),
  look_flow_total: calc(flow, "SUM(bubblers.look_flow)", "Flow without allowance", { strong: true, decimals: 1 }),
  stones_water: calc(waterVolume, "SUM(bubblers.water_running)", "Water on their sides", { decimals: 1 }),
  urns_water: calc(waterVolume, "SUM(bubblers.water_standing)", "Water in urns", { decimals: 1, zero: "0" }),
  wet_stone: calc(area, "SUMPRODUCT(1.5708*(bubblers.wide+bubblers.deep)*bubblers.tall)", "Wet sides"),
  tallest_stone: calc(smallLength, "MAX(bubblers.tall)", "Tallest", { decimals: 0 }),
  stones_weight: calc(weight, "SUM(bubblers.weighs)", "Weight of all", { strong: true }),
  heaviest_bubbler: calc(weight, "MAX(bubblers.weighs)", "Heaviest", { working: true }),
  pier_blocks: calc(count, "SUM(bubblers.pier_blocks)", "Blocks of piers"),
  piers_counted: calc(count, "SUM(bubblers.pier_count)", "Piers", { working: true }),
  on_crates: calc(count, "SUMPRODUCT((bubblers.used>0)*(bubblers.on_piers=FALSE))", "Stones on crates", {
    working: true,
  }),
  drill_length: calc(length, "SUM(bubblers.drill_length)", "Length to drill", { working: true }),
  drill_days: calc(count, "WHOLE_UP(drill_length/MAX(0.1[ft],drilled_a_day))", "Days of the core drill", {
    working: true,
  }),
  splash_spare: calc(
    length,
    "IF(stones_counted>0,MAX(0[ft],basin_length-MAX(bubblers.far)+LEAST_WHERE(bubblers.near,bubblers.used,1)),0)",
    "Basin length beyond all splash",
    { working: true },
  ),
  some_stones: check(
    "stones_counted>0",
    "There is no stone and no urn: enter one with its height in bubblers on sheet Walk.",
    { label: "No stones" },
  ),
  crates_bear: check(
    "OR(on_crates=0,crate_bearing_known)",
    "The bearing of crates, {crate_bearing|0}, is a placeholder. Enter the maker's on sheet Office rules, and set crate_bearing_known, or use piers.",
    { label: "Crate bearing unknown", level: "look" },
  ),
});

export const bubblersBlocks: readonly Block[] = [
  bubblersTable,
  totals,
  bubblerLooks,
  rules,
  paragraphs(
    "Notes",
    "Over an upright open pipe a low flow wells up as over a round weir, a strong one stands as a jet. Drilled stone is no test pipe: its edge is rough and seldom level. Set each stone by its valve and by eye.",
    "Splash: what runs down wets the ground near the foot. Drops go as far as a share of the throw that the speed of the water would give, and drift with the wind while they fall. Both shares are practice, no source: watch it on a windy day before the edge is planted.",
    "A tall stone on a small foot is a danger to whoever leans on it. Who pins it answers for that; where children play, ask an engineer.",
  ),
];

export { section as bubblersSection };
