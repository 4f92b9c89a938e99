import {
  calc,
  check,
  count,
  current,
  decide,
  length,
  lines,
  office,
  percent,
  power,
  text,
  voltage,
  walk,
} from "../../../engine/template/index.js";
import { conductorArea } from "../../vocabulary/quantities.js";

const asBought = "common practice, no source: compare the item that is bought";

/** Lights on low voltage: transformers by their load, and what the cable loses. */
export const lights = lines("Lights", {
  lights_wanted: walk(count, "Number of lights", {
    section: "Look and sound wanted",
    default: 0,
    least: 0,
    most: 60,
    whole: true,
  }),
  cable_a_light: office(length, "Cable for each light", { default: 20, least: 0, most: 300 }),
  light_power: office(power, "Power of one light", {
    default: 3,
    least: 0.5,
    most: 500,
    decimals: 1,
    source: asBought,
  }),
  light_voltage: office(voltage, "Voltage of the lights", {
    default: 12,
    least: 6,
    most: 15,
    note: "Above 15 V a luminaire in a fountain needs ground-fault protection: NEC 680.51(A).",
    source: asBought,
  }),
  lights_load: calc(power, "lights_wanted*light_power", "Load of all lights", { strong: true }),
  lights_current: calc(current, "IF(supply_voltage>0,lights_load/supply_voltage,0)", "Current of the transformers", {
    working: true,
  }),
  transformer_rating: office(power, "Rating of one transformer", {
    default: 150,
    least: 10,
    most: 2000,
    source: asBought,
  }),
  transformer_share: office(percent, "Loading limit of a transformer", {
    default: 0.8,
    least: 0.1,
    most: 1,
    decimals: 0,
    source: "common practice, no source",
  }),
  transformers_needed: calc(
    count,
    "IF(transformer_rating*transformer_share>0,WHOLE_UP(lights_load/(transformer_rating*transformer_share)),0)",
    "Transformers",
    {
      strong: true,
    },
  ),
  light_cable: decide(text, "Cable of the lights", { default: "12 AWG", choices: "wires.name" }),
  light_cable_area: calc(
    conductorArea,
    "IF(ISBLANK(light_cable),0,PICK(wires.area,wires.name,light_cable))",
    "Area of its conductor",
    { working: true },
  ),
  light_drop_share: calc(
    percent,
    "IF(lights_wanted*light_voltage>0,VOLTAGE_DROP(light_power/light_voltage,cable_a_light,light_cable_area)/light_voltage,0)",
    "Voltage drop at a light",
    { note: "Each light on a cable of its own." },
  ),
  light_drop_low: check(
    "light_drop_share<=drop_limit",
    "Lights lose {light_drop_share} of their voltage over {cable_a_light|0} of {light_cable}, more than {drop_limit}. Choose a thicker light_cable on sheet Decisions.",
    { label: "Voltage drop too high", level: "look" },
  ),
});

/** What the counter asks for. */
export const lightsSaid = lines("Wording of the lights", {
  light_said: calc(text, "~{light_power|0}, {light_voltage|0}", "Lights, as ordered"),
  transformer_said: calc(text, "~{transformer_rating|0}, to {light_voltage|0}", "Transformer, as ordered"),
});
