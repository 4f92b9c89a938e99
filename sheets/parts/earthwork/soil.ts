import {
  calc,
  decide,
  density,
  lines,
  number,
  office,
  percent,
  published,
  table,
  text,
  walk,
} from "../../../engine/template/index.js";
import { soils } from "../../tables/soils.js";
import { oneOf } from "../../vocabulary/one-of.js";

const ordinary = "bank x (1 - shrink)";
const fhwa = "bank / (1 + shrink)";
const row = (column: string) => `IF(ISBLANK(soil_kind),0,PICK(soils.${column},soils.name,soil_kind))`;
const own = (name: string, column: string) => `IF(ISBLANK(${name}),${row(column)},${name})`;

/** Bank is as it lies, loose is on the truck, compacted is in the berm. */
export const soilLines = lines("Soil: in place, loose, compacted", {
  soil_kind: walk(text, "Soil", {
    section: "Soil",
    default: soils[0].name,
    choices: "soils.name",
    note: `In words, ${oneOf(soils)}`,
  }),
  own_swell: decide(percent, "Override swell", {
    optional: true,
    least: 0,
    most: 1.5,
  }),
  own_shrink: decide(percent, "Override shrink", {
    optional: true,
    least: -0.6,
    most: 0.6,
  }),
  shrink_convention: office(text, "Compacted volume is", {
    default: ordinary,
    choices: [ordinary, fhwa],
    note: "Two conventions are in use: a shrink of 25% means 0.75 by the first and 0.80 by the second (FHWA).",
  }),
  soil_swell: calc(percent, own("own_swell", "swell"), "Swell, in place to loose"),
  soil_shrink: calc(percent, own("own_shrink", "shrink"), "Shrink, in place to compacted"),
  loose_factor: calc(number, "1+soil_swell", "Loose volume factor", {
    working: true,
    note: "Loose volume of one volume in place.",
  }),
  compacted_factor: calc(
    number,
    `COMPACTED_FACTOR(soil_shrink,IF(shrink_convention="${fhwa}",1,0))`,
    "Compacted volume factor",
    { working: true, note: "Compacted volume of one volume in place." },
  ),
  fill_slope: calc(number, row("fill_run"), "Steepest berm slope", {
    working: true,
    note: "Run to 1 of height.",
    decimals: 1,
  }),
  soil_density: calc(density, row("density_in_place"), "Soil weight in place", { working: true }),
});

export const soilTable = table(
  "soils",
  "Swell and shrink (published)",
  { working: true, rows: soils.length, data: soils },
  {
    name: published(text, "Soil", { source: "see the last column" }),
    swell: published(percent, "Swell", { source: "see the last column" }),
    shrink: published(percent, "Shrink", { source: "see the last column" }),
    density_in_place: published(density, "Weight in place", {
      source: "excavation rule of thumb: soil about 100, rock about 150 lb/ft³",
    }),
    origin: published(text, "Source", { source: "as given" }),
    fill_run: published(number, "Fill slope: run to 1", {
      source: "see the last column",
      decimals: 1,
    }),
    digging: published(text, "Digging", { source: "common practice, no source" }),
    fill_origin: published(text, "Source of the slope", { source: "as given" }),
  },
);
