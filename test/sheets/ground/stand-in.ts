import {
  area,
  calc,
  flow,
  hoursADay,
  input,
  length,
  lines,
  number,
  sheet,
  smallLength,
  table,
  text,
  waterVolume,
} from "../../../engine/template/index.js";

/** Declares, as inputs, what the sheets of water hand to the sheets of the ground. */
export const waterStandIn = sheet("Water", "Stands in for the sheets of water.", [
  lines("Water", {
    hours_a_day: input(hoursADay, "Hours", { default: 24 }),
    stream_length: input(length, "Stream", { default: 30 }),
    water_in_transit: input(waterVolume, "In transit", { default: 300 }),
    drain_back: input(waterVolume, "Drain-back", { default: 40 }),
    pump_minimum_water: input(smallLength, "Pump's minimum", { default: 6 }),
    total_flow: input(flow, "Flow", { default: 60 }),
    freeboard: input(smallLength, "Bank above the water", { default: 3 }),
    stream_surface: calc(area, "SUM(reaches.surface) + SUM(pools.surface)", "Surface"),
    pool_water: calc(waterVolume, "SUM(pools.water_standing)", "Standing in pools"),
    trench_length: input(length, "Trench", { default: 40 }),
  }),
  table(
    "falls",
    "Falls",
    { rows: 12, filled: "width > 0" },
    {
      name: input(text, "Name", { optional: true }),
      width: input(length, "Width"),
      drop: input(length, "Drop"),
      leap: input(length, "Leap"),
    },
  ),
  table(
    "reaches",
    "Reaches",
    { rows: 12, filled: "length > 0" },
    {
      name: input(text, "Name", { optional: true }),
      length: input(length, "Length"),
      width: input(length, "Width"),
      side: input(number, "Side slope", { default: 0.5 }),
      bank_height: input(length, "Bank"),
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
      width: input(length, "Width"),
      depth: input(length, "Depth"),
      rise: input(smallLength, "Rise", { default: 1 }),
      surface: calc(area, "length * width", "Surface"),
      water_standing: calc(waterVolume, "surface * depth * 0.6", "Standing"),
    },
  ),
]);
