import {
  area,
  bore,
  calc,
  count,
  date,
  days,
  input,
  length,
  lines,
  money,
  number,
  power,
  prose,
  type SheetDeclaration,
  sheet,
  spaceVolume,
  table,
  template,
  text,
  tons,
  yesno,
} from "../../../engine/template/index.js";
import { machineLayout } from "../../../sheets/parts/book/machine-layout.js";
import { placeLayout } from "../../../sheets/parts/book/place-layout.js";
import type { BuysOfSheet } from "../../../sheets/parts/brought.js";
import { soilTable } from "../../../sheets/parts/earthwork/soil.js";
import { buysTable } from "../../../sheets/parts/materials/buys.js";
import { jobQuotes } from "../../../sheets/parts/materials/job-quotes.js";
import { bulkLines, materialLines } from "../../../sheets/parts/materials/lines.js";
import {
  bulkLoads,
  extraLines,
  materialsTotals,
  taxes,
} from "../../../sheets/parts/materials/tables.js";
import { placesTable } from "../../../sheets/parts/weather/places.js";
import { wholeOf } from "../../../sheets/parts/whole.js";
import { waterfallParts } from "../../../sheets/templates/waterfall.js";
import { itemCode } from "../../../sheets/vocabulary/item-code.js";
import { soilVolume } from "../../../sheets/vocabulary/quantities.js";
import { waterfallFormulas, waterfallSheet } from "../../support/waterfall-sheet.js";

const optional = { optional: true } as const;

/** What the water and ground sheets would hand over, given by hand here. */
const quantities: SheetDeclaration = sheet("Quantities", "In place of the sheets before.", [
  lines("Job", {
    bid_date: input(date, "Bid date"),
    good_for_days: input(days, "Good for", { default: 30 }),
    bid_good_until: calc(date, "bid_date+good_for_days", "Good until"),
    start_month: input(count, "Start month", { default: 5 }),
    place_at: calc(count, "0", "Row of the place"),
    place_looked_up: calc(yesno, "FALSE", "Place looked up"),
    described: calc(yesno, "TRUE", "First fields given"),
    weather_known: calc(yesno, "TRUE", "Weather known"),
    storm_known: calc(yesno, "TRUE", "Storm known"),
  }),
  placesTable,
  lines("Quantities", {
    stream_length: input(length, "Stream", { default: 0 }),
    main_length: input(length, "Main", { default: 0 }),
    flexible_length: input(length, "Flexible pipe", { default: 6 }),
    manifold_tees: input(count, "Tees of the manifold", { default: 0 }),
    manifold_caps: input(count, "Caps of the manifold", { default: 0 }),
    main_size: input(text, "Main size", { default: "2 in" }),
    clarifier_included: input(yesno, "Clarifier", { default: false }),
    clarifier_load: input(power, "Clarifier's load", { default: 0 }),
    check_valve_fitted: input(yesno, "Check valve", { default: false }),
    pump_watts: input(power, "Pump's power", { default: 0 }),
    pump_speed: input(number, "Pump's speed", { default: 1 }),
    walls_to_permit: input(count, "Walls with an engineer", { default: 0 }),
    digs_engineered: input(count, "Digs by an engineer", { default: 0 }),
    shored_face: input(area, "Face held", { default: 0 }),
    pool_backfill: input(soilVolume, "Backfill of pools", { default: 0 }),
    bed_mortar: input(spaceVolume, "Mortar", { default: 0 }),
    trench_effort: input(soilVolume, "Pipe trench", { default: 0 }),
    narrow_effort: input(soilVolume, "Narrow trenches", { default: 0 }),
    trench_bedding: input(soilVolume, "Bedding of trenches", { default: 0 }),
    bedding_volume: input(soilVolume, "Bedding of the basin", { default: 0 }),
    main_elbows_90: input(count, "Elbows 90°", { default: 0 }),
    main_elbows_45: input(count, "Elbows 45°", { default: 0 }),
    main_valves: input(count, "Valves", { default: 0 }),
    main_tees: input(count, "Tees", { default: 0 }),
    machine_row: calc(count, "0", "Machine row"),
    pump_row: calc(count, "PLACE_OR_ZERO(pumps.code,pump_code)", "Pump row"),
    pump_price: calc(money, "IF(pump_row>0,INDEX(pumps.cost,MAX(pump_row,1)),0)", "Pump price"),
    pump_code: input(text, "Pump", { default: "demo-pump" }),
    liner_area_bought: input(area, "Liner", { default: 0 }),
    liner_code: itemCode("Liner code", { default: "liner-45mil" }),
    seam_length: input(length, "Seams", { default: 0 }),
    crates_needed: input(count, "Crates", { default: 0 }),
    vaults_needed: input(count, "Vaults", { default: 0 }),
    crate_code: itemCode("Crate code", { default: "crate" }),
    built_stone: input(tons, "Stone of falls", { default: 0 }),
    placed_stone: input(tons, "Boulders", { default: 0 }),
    rolled_stone: input(tons, "Boulders rolled", { default: 0 }),
    laid_stone: input(tons, "Cobble", { default: 0 }),
    raked_stone: input(tons, "Gravel", { default: 0 }),
    pots_set: input(count, "Pots", { default: 0 }),
    pots_fitted: input(count, "Pots fitted", { default: 0 }),
    falls_built: calc(count, "SUMPRODUCT((falls.width>0)*1)", "Falls"),
    lip_length: calc(length, "SUM(falls.width)", "Lips"),
    fall_face: input(area, "Faces", { default: 0 }),
    back_wall: input(area, "Back walls", { default: 0 }),
    soil_kind: input(text, "Soil", { default: "common earth" }),
    dirt_wheeled: input(soilVolume, "Dirt wheeled", { default: 0 }),
    strip_volume: input(soilVolume, "Strip", { default: 0 }),
    dig_volume: input(soilVolume, "Dig", { default: 0 }),
    berm_volume: input(soilVolume, "Berm", { default: 0 }),
    haul_loads: input(count, "Loads out", { default: 0 }),
    haul_bed: input(soilVolume, "Truck's bed", { default: 10 }),
    truck_payload: input(tons, "Truck's payload", { default: 15 }),
    basin_backfill: input(soilVolume, "Backfill", { default: 0 }),
    backfill: calc(soilVolume, "basin_backfill+pool_backfill", "Backfill, all digs"),
    wall_base: input(soilVolume, "Base of walls", { default: 0 }),
    topsoil_kept: input(number, "Topsoil kept", { default: 1 }),
    fill_line_length: input(length, "Fill line", { default: 0 }),
    wall_face: input(area, "Wall", { default: 0 }),
    ground_mats: input(count, "Mats", { default: 0 }),
    shoulder_height: input(length, "Shoulders", { default: 0 }),
    pump_sets: input(count, "Unions and clamps", { default: 0 }),
    valve_boxes: input(count, "Valve boxes", { default: 0 }),
    winter_drains: input(count, "Drain valves", { default: 0 }),
    fabric_area: input(area, "Fabric", { default: 0 }),
    small_loads: input(count, "Small loads", { default: 0 }),
    toilets: input(count, "Toilets", { default: 0 }),
    lawn_area: input(area, "Lawn", { default: 0 }),
    plants_wanted: input(count, "Plants", { default: 0 }),
    bark_volume: input(soilVolume, "Bark", { default: 0 }),
    topsoil_import: input(soilVolume, "Topsoil", { default: 0 }),
  }),
  soilTable,
  table("terms", "Terms", { rows: 2 }, { words: input(text, "Words", { default: "as agreed" }) }),
  table("pump_points", "Curve", { rows: 2 }, { watts: input(power, "Power", optional) }),
  table(
    "falls",
    "Falls",
    { rows: 3 },
    {
      name: input(text, "Name", optional),
      width: input(length, "Width", optional),
      width_counted: calc(length, "width", "Width that counts"),
    },
  ),
  table(
    "pipe_lines",
    "Outlets",
    { rows: 3 },
    {
      name: input(text, "Name", optional),
      pipe_size: input(text, "Pipe", optional),
      length: input(length, "Length", optional),
      elbows_90: input(count, "Elbows 90°", optional),
      elbows_45: input(count, "Elbows 45°", optional),
      bore: input(bore, "Bore", optional),
      siphon_stop: input(text, "Siphon stopped by", optional),
    },
  ),
  table(
    "stones",
    "Stones",
    { rows: 2 },
    {
      name: input(text, "Name", optional),
      code: itemCode("Code", optional),
      tons: input(tons, "Tons", optional),
    },
  ),
  table(
    "pumps",
    "Pumps",
    { rows: 2, data: [{ code: "demo-pump", cost: 900, good_until: "2027-06-30" }] },
    {
      good_until: input(date, "Good until", optional),
      placeholder: input(yesno, "Placeholder", { default: false }),
      code: input(text, "Code", optional),
      cost: input(money, "Cost", optional),
    },
  ),
]);

const linerBuys: BuysOfSheet = {
  sheet: "Liner",
  table: "liner_buys",
  buys: [
    { what: "liner", code: "liner_code", wanted: "liner_area_bought", unit: "ft²" },
    { what: "crates", code: "crate_code", wanted: "crates_needed", unit: "each" },
  ],
};
const stoneBuys: BuysOfSheet = {
  sheet: "Stone",
  table: "stone_buys",
  buys: [1, 2].map((row) => ({
    what: `row ${row}`,
    code: `INDEX(stones.code,${row})&""`,
    wanted: `INDEX(stones.tons,${row})`,
    unit: "ton",
    byLoad: true,
    named: "stones.name",
    waste: 0.05,
  })),
};

const bought = { buys: [linerBuys, stoneBuys], takeoff: wholeOf(waterfallParts).takeoff };

/** The sheets of money on their own. */
export const moneyTemplate = template({
  name: "money",
  version: 1,
  title: "Money sheets alone",
  headline: ["price"],
  formulas: waterfallFormulas,
  office: [placeLayout, machineLayout],
  sheets: [
    { ...quantities, blocks: [...quantities.blocks, buysTable(linerBuys), buysTable(stoneBuys)] },
    waterfallSheet("Prices"),
    waterfallSheet("Electric"),
    waterfallSheet("Labor"),
    waterfallSheet("Schedule"),
    sheet("Materials", "What is bought.", [
      materialsTotals,
      bulkLoads,
      materialLines(bought),
      bulkLines(bought),
      extraLines,
      jobQuotes,
      taxes,
    ]),
    waterfallSheet("Price"),
    sheet("Papers", "In place of the sheets after.", [
      prose("Names", {
        names_said: calc(
          text,
          'TEXTJOIN("; ",TRUE,stone_drop,falls.name,pipe_lines.name,additional_items.description,draws.name)',
          "Names",
        ),
      }),
    ]),
  ],
});
