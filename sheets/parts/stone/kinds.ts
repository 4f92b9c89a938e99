import {
  calc,
  decide,
  density,
  length,
  office,
  percent,
  smallLength,
  table,
  text,
  tons,
  weight,
} from "../../../engine/template/index.js";
import { stoneKinds } from "../../tables/stone.js";
import { itemCode } from "../../vocabulary/item-code.js";
import { capacity } from "../capacity.js";

/** The section of the rules of stone that a job seldom changes. */
const places = "Where stone goes";

/** What is bought: each kind of stone with the largest of it. */
export const stoneKindTable = table(
  "stones",
  "Kinds of stone",
  {
    rows: capacity.stones,
    filled: "AND(LEN(name)>0,LEN(rock)>0)",
    shown: "tons>0",
    data: stoneKinds,
    note: "Where it goes stands in the list of places. By the pallet: the pack of its item in the office book.",
  },
  {
    name: office(text, "Stone"),
    code: itemCode("Item code"),
    rock: office(text, "Rock", { choices: "rocks.name" }),
    stone_length: decide(length, "Largest stone: length", { section: places, default: 1, least: 0.01, most: 20 }),
    stone_width: decide(length, "Largest stone: width", { section: places, default: 1, least: 0.01, most: 20 }),
    stone_height: decide(length, "Largest stone: height", { section: places, default: 1, least: 0.01, most: 20 }),
    fullness: office(percent, "Largest stone: solid share", {
      default: 0.9,
      least: 0.4,
      most: 1,
      decimals: 0,
      note: "A slab about 90%, an angular boulder 70%, a round one 52% (an ellipsoid's pi/6). Where in doubt, more.",
      source: "common practice, no source",
    }),
    on_site: decide(tons, "Already on site", { section: places, default: 0, least: 0, most: 10000 }),
    solid_density: calc(density, "PICK(rocks.density,rocks.name,rock)", "Solid density"),
    size: calc(smallLength, "MAX(stone_length,stone_width,stone_height)", "Largest size"),
    heaviest: calc(
      weight,
      "STONE_WEIGHT(stone_length,stone_width,stone_height,fullness,solid_density)",
      "Weight of the largest",
      { working: true },
    ),
    heaviest_placed: calc(weight, "LARGEST_WHERE(stone_places.heaviest,stone_places.stone,name)", "Heaviest placed"),
    // a most: to the nearest, half a pound would go either way by the last digit
    none_over: calc(text, "~, none over {heaviest_placed|0|down}", "Most that one weighs", {
      working: true,
      reader: "supplier",
    }),
    size_said: calc(text, '~up to {size|0}{IF(heaviest_placed>=10[lb],none_over,"")}', "Largest stone, as ordered", {
      working: true,
      reader: "supplier",
    }),
    tons: calc(tons, "SUM_WHERE(stone_places.tons,stone_places.stone,name)", "Weight", { decimals: 1, strong: true }),
    to_buy: calc(tons, "MAX(0,tons-on_site)", "To buy", { decimals: 1 }),
  },
);
