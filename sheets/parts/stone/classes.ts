import {
  area,
  calc,
  check,
  decide,
  density,
  length,
  office,
  percent,
  smallLength,
  spaceVolume,
  table,
  text,
  tons,
  weight,
} from "../../../engine/template/index.js";
import { stoneClasses } from "../../tables/stone.js";
import { itemCode } from "../../vocabulary/item-code.js";
import { capacity } from "../capacity.js";

/** What a class can cover. */
const coverings = ["lips", "banks", "stream bed", "fall faces", "basin top", "basin fill", "own size"];

export const stoneClassTable = table(
  "stones",
  "Classes of stone",
  {
    rows: capacity.stones,
    filled: "LEN(name)>0",
    data: stoneClasses,
    note: "What it covers tells which measure of the job is taken: the width of all lips, both banks along the stream, one kind of bed, the faces of the falls, the top of the basin, the room around its crates, or the class's own length. Width and thickness are the stone's course on it; basin fill needs neither, nor does a stream bed: its depth is bed_stone_depth on sheet Decisions, its voids are those of the table of beds.",
  },
  {
    name: office(text, "Class"),
    code: itemCode("Item code"),
    covers: office(text, "Covers", { again: true, choices: coverings }),
    bed: decide(text, "Bed, for stream bed", { optional: true, choices: "beds.name" }),
    share: decide(percent, "Share covered", {
      default: 1,
      least: 0,
      most: 3,
      decimals: 0,
    }),
    length: decide(length, "Length, for own size", { optional: true, least: 0, most: 5000 }),
    width: decide(length, "Width of the course", {
      note: "Or its height.",
      optional: true,
      least: 0,
      most: 200,
    }),
    thickness: decide(length, "Thickness", { optional: true, least: 0, most: 20 }),
    voids: office(percent, "Voids between stones", {
      default: 0.4,
      least: 0,
      most: 0.6,
      decimals: 0,
      note: "Porosity: share of the whole volume.",
      source: "common practice, no source, except 40% for clean open-graded stone",
    }),
    rock: office(text, "Rock", { choices: "rocks.name" }),
    bed_area: calc(
      area,
      'IF(covers="stream bed",SUMPRODUCT((runs.bed=bed)*runs.length_counted*runs.width_counted)+IF(bed=pool_bed,SUM(pools.surface),0[ft²]),0[ft²])',
      "Bed of that kind",
    ),
    bed_voids: calc(
      percent,
      'IF(AND(covers = "stream bed", LEN(bed) > 0), PICK(beds.voids, beds.name, bed), 0)',
      "Voids of that bed",
    ),
    voids_used: calc(percent, "IF(bed_voids>0,bed_voids,voids)", "Voids used"),
    course_length: calc(
      length,
      "COURSE_LENGTH(covers,SUM(falls.width_counted),stream_length,length)",
      "Length of the course",
    ),
    face_area: calc(
      area,
      "FACE_AREA(covers,SUMPRODUCT(falls.width_counted,falls.drop_counted),basin_plan)",
      "Area faced",
    ),
    volume: calc(
      spaceVolume,
      "share*((course_length*width+face_area)*thickness+STONE_FILL(covers,bed_area*bed_stone_depth,basin_stone_volume))",
      "Volume laid",
    ),
    mortar: calc(
      spaceVolume,
      'IF(AND(covers = "stream bed", bed_voids = 0), volume * voids, 0[ft³])',
      "Mortar between stones",
      { note: "Where the bed's table gives no voids, mortar fills those between its stone." },
    ),
    tons: calc(tons, "STONE_TONS(volume,voids_used,solid_density)", "Weight", { decimals: 1 }),
    stone_length: decide(length, "Largest stone: length", { default: 1, least: 0.01, most: 20 }),
    stone_width: decide(length, "Largest stone: width", { default: 1, least: 0.01, most: 20 }),
    stone_height: decide(length, "Largest stone: height", { default: 1, least: 0.01, most: 20 }),
    fullness: office(percent, "Largest stone: solid share", {
      default: 0.9,
      least: 0.4,
      most: 1,
      decimals: 0,
      note: "A slab about 90%, an angular boulder 70%, a round one 52% (an ellipsoid's pi/6). Where in doubt, more.",
      source: "common practice, no source",
    }),
    solid_density: calc(density, "PICK(rocks.density,rocks.name,rock)", "Solid density"),
    heaviest: calc(
      weight,
      "STONE_WEIGHT(stone_length,stone_width,stone_height,fullness,solid_density)",
      "Heaviest stone",
    ),
    bed_stone_size: calc(
      smallLength,
      'IF(AND(covers = "stream bed", share > 0), MAX(stone_length, stone_width, stone_height), 0)',
      "Largest bed stone",
    ),
    bed_bank: calc(
      length,
      'IF(covers = "stream bed", LEAST_WHERE(runs.bank_counted, runs.bed, bed), 0)',
      "Lowest bank of that bed",
      { zero: "none" },
    ),
    bed_holds_stone: check(
      "OR(bed_bank<=0,bed_stone_size<=bed_stone_depth+bed_bank)",
      "{name}: stone up to {bed_stone_size} in a bed of {bed_stone_depth} with banks of {bed_bank} can stand above them. Choose smaller stone, or deepen the bed.",
      { label: "Bed stone above the banks", level: "look" },
    ),
    measured: check(
      'OR(volume > 0, share = 0, AND(covers = "stream bed", LEN(bed) > 0))',
      "{name}: {covers} gives no volume. Enter width and thickness (length for own size, bed for a stream bed) in stones on sheet Decisions.",
      { label: "Stone class without volume" },
    ),
  },
);
