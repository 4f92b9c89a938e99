import {
  area,
  calc,
  check,
  decide,
  length,
  percent,
  smallLength,
  spaceVolume,
  table,
  text,
  tons,
  weight,
} from "../../../engine/template/index.js";
import { stonePlaces, stoneWork } from "../../tables/stone.js";
import { capacity } from "../capacity.js";
import { measureNames } from "./measures.js";

const onBed = 'covers="stream bed"';
const measure = (column: string) => `PICK(stone_measures.${column},stone_measures.name,covers)`;
const ofStone = (column: string) => `PICK(stones.${column},stones.name,stone)`;

/** Where stone goes: how much of it by the geometry of the job, and how it is placed. */
export const stonePlaceTable = table(
  "stone_places",
  "Where stone goes",
  {
    section: "Where stone goes",
    rows: capacity.stonePlaces,
    filled: "AND(LEN(name)>0,LEN(covers)>0,LEN(stone)>0)",
    shown: "tons>0",
    data: stonePlaces,
    note: "Covers tells which measure of the job is taken. Width and thickness are the course of stone on it; a face needs its thickness only, basin fill neither, nor does a stream bed, whose depth of stone and voids stand on sheet Decisions and in the table of beds.",
  },
  {
    name: decide(text, "Place"),
    covers: decide(text, "Covers", { choices: measureNames }),
    bed: decide(text, "Bed, for stream bed", { optional: true, choices: "beds.name" }),
    stone: decide(text, "Stone", { choices: "stones.name" }),
    work: decide(text, "How it is placed", {
      default: stoneWork.placed,
      choices: Object.values(stoneWork),
    }),
    share: decide(percent, "Share covered", { default: 1, least: 0, most: 3, decimals: 0 }),
    length: decide(length, "Length, for own size", { optional: true, least: 0, most: 5000 }),
    width: decide(length, "Width of the course", { note: "Or its height.", optional: true, least: 0, most: 200 }),
    thickness: decide(length, "Thickness", { optional: true, least: 0, most: 20 }),
    voids: decide(percent, "Voids between stones", {
      default: 0.4,
      least: 0,
      most: 0.6,
      decimals: 0,
      note: "Porosity: share of the whole volume.",
      source: "common practice, no source, except 40% for clean open-graded stone",
    }),
    along: calc(length, `IF(covers="own size",length,${measure("along")})`, "Length covered", { zero: "–" }),
    bed_face: calc(
      area,
      "SUMPRODUCT((runs.bed=bed)*runs.length_counted*runs.width_counted)+IF(bed=pool_bed,SUM(pools.surface),0[ft²])",
      "Face of that bed",
      { zero: "–" },
    ),
    face: calc(area, `IF(${onBed},bed_face,${measure("face")})`, "Face covered", { zero: "–" }),
    bed_voids: calc(percent, `IF(AND(${onBed},LEN(bed)>0),PICK(beds.voids,beds.name,bed),0)`, "Voids of that bed", {
      working: true,
    }),
    voids_used: calc(percent, "IF(bed_voids>0,bed_voids,voids)", "Voids used"),
    volume: calc(
      spaceVolume,
      `share*((along*width+face)*IF(${onBed},bed_stone_depth,thickness)+${measure("room")})`,
      "Volume laid",
    ),
    mortar: calc(spaceVolume, `IF(AND(${onBed},bed_voids=0),volume*voids,0[ft³])`, "Mortar between stones", {
      zero: "–",
      note: "Where the bed's table gives no voids, mortar fills those between its stone.",
    }),
    tons: calc(tons, `STONE_TONS(volume,voids_used,${ofStone("solid_density")})`, "Weight", {
      decimals: 1,
      strong: true,
    }),
    spot_weight: calc(weight, `tons*${measure("spot")}`, "Weight in one spot", { working: true }),
    heaviest: calc(weight, `MIN(${ofStone("heaviest")},spot_weight)`, "Heaviest stone", {
      note: "The largest of its kind, and no more than one spot of the place takes.",
    }),
    bed_bank: calc(
      smallLength,
      `IF(${onBed},LEAST_WHERE(runs.bank_counted,runs.bed_laid,bed),0)`,
      "Lowest bank of that bed",
      {
        zero: "none",
      },
    ),
    bed_holds_stone: check(
      `OR(bed_bank<=0,share<=0,${ofStone("size")}<=bed_stone_depth+bed_bank)`,
      "{name}: stone can stand above a bed of {bed_stone_depth} with banks of {bed_bank}. Choose smaller stone, or deepen the bed.",
      { label: "Bed stone above the banks", level: "look" },
    ),
    measured: check(
      `OR(volume>0,share=0,IF(OR(${onBed},covers="own size"),AND(${onBed},LEN(bed)>0),along+face/1[ft]=0))`,
      "{name}: {covers} gives no volume. Enter width and thickness (length for own size, bed for a stream bed) in stone_places on sheet Decisions.",
      { label: "Stone place without volume" },
    ),
  },
);
