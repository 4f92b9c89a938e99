import {
  area,
  calc,
  count,
  flow,
  hoursADay,
  input,
  length,
  lines,
  number,
  percent,
  sheet,
  smallLength,
  table,
  text,
  tons,
  weight,
  yesno,
} from "../../../engine/template/index.js";
import { machinesTable } from "../../../sheets/parts/lifting/lifting.js";
import { placesTable } from "../../../sheets/parts/weather/places.js";
import { beds } from "../../../sheets/tables/beds.js";
import { waterVolume } from "../../../sheets/vocabulary/quantities.js";

// no office book here: the columns that these sheets read are inputs
const { from: _, ...places } = placesTable;
const unread = /^(description|source|rain_.*)$/;
const columnsRead = Object.fromEntries(
  Object.entries(placesTable.columns)
    .filter(([key]) => !unread.test(key))
    .map(([key, cell]) => [
      key,
      cell.kind === "book" ? input(cell.quantity, cell.label, { optional: true }) : cell,
    ]),
);

const machines = table(
  "machines",
  "Machines",
  {
    rows: 2,
    filled: "LEN(code)>0",
    data: [
      {
        ...{ code: "mini", description: "mini excavator", method: "machine", chart_copied: true },
        ...{ radius_1: 8, lift_1: 2400, radius_2: 10, lift_2: 1900, radius_3: 12, lift_3: 1500 },
        ...{ radius_4: 14, lift_4: 1200 },
      },
    ],
  },
  Object.fromEntries(
    Object.entries(machinesTable.columns)
      .filter(([key]) => !/^(source|placeholder)$/.test(key))
      .map(([key, cell]) => [key, input(cell.quantity, cell.label, { optional: true })]),
  ),
);

/** Declares, as inputs, what the sheets of water hand to the sheets of the ground. */
export const waterStandIn = sheet("Water", "Stands in for the sheets of water.", [
  beds,
  { ...places, columns: columnsRead },
  machines,
  lines("Water", {
    hours_a_day: input(hoursADay, "Hours", { default: 24 }),
    stream_length: input(length, "Stream", { default: 30 }),
    stream_water: input(waterVolume, "In transit", { default: 300 }),
    pipe_water: input(waterVolume, "In the pipes", { default: 40 }),
    bed_water_kept: input(waterVolume, "Kept by the bed", { default: 30 }),
    pot_water: input(waterVolume, "In pots", { default: 10 }),
    drain_back: input(waterVolume, "Drain-back", { default: 40 }),
    rim_above_water: input(smallLength, "Rim above the running water", { default: 10 }),
    pump_minimum_water: input(smallLength, "Pump's minimum", { default: 6 }),
    total_flow: input(flow, "Flow", { default: 60 }),
    freeboard: input(smallLength, "Bank above the water", { default: 3 }),
    stream_surface: calc(area, "SUM(runs.surface) + SUM(pools.surface)", "Surface"),
    pool_water: calc(waterVolume, "SUM(pools.water_standing)", "Standing in pools"),
    main_length: input(length, "Main", { default: 40 }),
    conduit_trench: input(length, "Trench of the conduit", { default: 0 }),
    bed_stone_depth: input(smallLength, "Stone on the bed", { default: 4 }),
    heaviest_pot: input(weight, "Pot", { default: 0 }),
    by_hand: input(yesno, "By hand", { default: false }),
    work_method: input(text, "Method", { default: "machine" }),
    crew_size: input(count, "Crew", { default: 3 }),
    // stands in for the sheets of money, which count the loads
    payload_taken: calc(tons, "truck_payload", "Truck's payload"),
    plants_bought: calc(count, "plants_wanted", "Plants"),
  }),
  lines("Falls", {
    lip_length: calc(length, "SUM(falls.width)", "Lips"),
    fall_face: calc(area, "SUMPRODUCT(falls.width,falls.drop)", "Faces"),
    shoulder_height: calc(length, "2*SUM(falls.drop)", "Shoulders"),
    back_wall: input(area, "Back walls", { default: 0 }),
  }),
  table(
    "falls",
    "Falls",
    { rows: 12, filled: "width > 0" },
    {
      name: input(text, "Name", { optional: true }),
      width: input(length, "Width"),
      drop: input(length, "Drop"),
      throw: input(length, "Throw"),
      width_counted: calc(length, "width", "Width, counted"),
      lip_built: calc(length, "width", "Lip built"),
      drop_counted: calc(length, "drop", "Drop, counted"),
    },
  ),
  table(
    "lip_said",
    "Lips",
    { rows: 12, beside: "falls", filled: "width > 0" },
    { lip_stone: calc(length, "width", "Longest stone") },
  ),
  table(
    "levels",
    "Levels",
    { rows: 12, beside: "falls", filled: "width > 0" },
    { drop: calc(length, (row) => `INDEX(falls.drop,${row})`, "Drop") },
  ),
  table(
    "pipe_lines",
    "Outlets",
    { rows: 8, filled: "length > 0" },
    { length: input(length, "Length") },
  ),
  table(
    "runs",
    "Reaches",
    { rows: 12, filled: "length > 0" },
    {
      name: input(text, "Name", { optional: true }),
      length: input(length, "Length"),
      length_plus: input(smallLength, "Length, inches", { default: 0 }),
      width: input(length, "Width"),
      length_counted: calc(length, "length + length_plus", "Length, counted"),
      width_counted: calc(length, "width", "Width, counted"),
      bed: input(text, "Bed", { default: "cobble" }),
      bed_laid: calc(text, "bed", "Bed laid"),
      side: input(number, "Side slope", { default: 0.5 }),
      bank_height: input(length, "Bank"),
      bank_counted: calc(length, "bank_height", "Bank, counted"),
      surface: calc(area, "length * width", "Surface"),
    },
  ),
  table(
    "pools",
    "Pools",
    { rows: 6, filled: "length > 0" },
    {
      name: input(text, "Name", { optional: true }),
      length: input(length, "Length"),
      length_plus: input(smallLength, "Length, inches", { default: 0 }),
      width: input(length, "Width"),
      depth: input(length, "Depth"),
      length_counted: calc(length, "length + length_plus", "Length, counted"),
      width_counted: calc(length, "width", "Width, counted"),
      depth_counted: calc(length, "depth", "Depth, counted"),
      rise: input(smallLength, "Rise", { default: 1 }),
      filled_share: input(percent, "Filled", { default: 1 }),
      mean_depth: input(percent, "Mean depth", { default: 0.6 }),
      surface: calc(area, "length * width * filled_share", "Surface"),
      water_standing: calc(waterVolume, "surface * depth * mean_depth", "Standing"),
    },
  ),
]);
