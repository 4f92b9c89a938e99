import {
  flow,
  hoursADay,
  input,
  length,
  lines,
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
      bank_height: input(length, "Bank"),
    },
  ),
]);
