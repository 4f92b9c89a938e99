import {
  calc,
  check,
  current,
  decide,
  lines,
  number,
  office,
  percent,
  power,
  published,
  text,
  voltage,
  voltageDrop,
} from "../../../engine/template/index.js";
import { conductorArea } from "../../vocabulary/quantities.js";
import { plus } from "../added.js";
import type { Whole } from "../brought.js";

/** The customer's electrician then sizes it; the proposal says what the pump asks for. */
const byCustomer = 'electrical_work="by the customer"';

const ofWire = (column: string) => `IF(ISBLANK(wire_size),0,PICK(wires.${column},wires.name,wire_size))`;

/** Load, breaker and wire of the circuit that feeds the pump and what runs beside it. */
export const circuit = ({ added }: Pick<Whole, "added">) =>
  lines("Circuit of the pump", {
    supply_voltage: decide(voltage, "Voltage of the pump's supply", {
      default: 120,
      least: 12,
      most: 600,
      source: "common practice, no source",
    }),
    power_factor: office(percent, "Power factor of the pump", {
      default: 0.8,
      least: 0.3,
      most: 1,
      decimals: 0,
      source: "common practice, no source: small motors",
    }),
    pump_nameplate: decide(current, "Current on the pump's nameplate", {
      optional: true,
      least: 0.1,
      most: 200,
      note: "Blank: from its watts and power factor. The nameplate goes before it.",
    }),
    pump_full_load: calc(
      power,
      "IF(MAX(pump_points.watts)>0[W],MAX(pump_points.watts),IF(pump_speed>0,pump_watts/pump_speed^3,0[W]))",
      "Pump at full speed",
      { note: "The most that its curve draws, whatever the speed set." },
    ),
    pump_current: calc(
      current,
      "IF(ISBLANK(pump_nameplate),IF(supply_voltage*power_factor>0[V],pump_full_load/(supply_voltage*power_factor),0),pump_nameplate)",
      "Current of the pump",
      { working: true },
    ),
    circuit_current: calc(current, `pump_current${plus(added("circuit current"))}`, "Current of the circuit", {
      strong: true,
    }),
    continuous_factor: published(number, "Continuous load factor", {
      working: true,
      value: 1.25,
      source: "NEC 210.20(A), 430.22: 125% of continuous load, or 80% of the breaker (from memory)",
    }),
    breaker_needed: calc(current, "continuous_factor*circuit_current", "Breaker needed", {
      strong: true,
    }),
    breaker_standard: calc(
      current,
      "MAX(15[A],CEILING(ROUND(breaker_needed/1[A],6),IF(breaker_needed<=50[A],5,10))*1[A])",
      "Next standard breaker",
      { working: true, decimals: 0, source: "NEC 240.6(A): 15 to 50 A by fives, then by tens to 110 A (from memory)" },
    ),
    breaker_rating: decide(current, "Breaker", { again: true, default: 20, least: 15, most: 100, decimals: 0 }),
    breaker_carries: check(
      `OR(${byCustomer},ROUND((breaker_rating-breaker_needed)/1[A],9)>=0)`,
      "The circuit carries {circuit_current}; the breaker must be {breaker_needed} or more, but is {breaker_rating|0}. Enter a larger breaker_rating on sheet Decisions.",
      { label: "Breaker too small" },
    ),
    wire_size: decide(text, "Wire of the circuit", { again: true, default: "12 AWG", choices: "wires.name" }),
    wire_area: calc(conductorArea, ofWire("area"), "Area of one conductor", { working: true }),
    wire_breaker: calc(current, ofWire("breaker"), "Largest breaker for that wire", { working: true, decimals: 0 }),
    wire_protected: check(
      `OR(${byCustomer},breaker_rating<=wire_breaker)`,
      "A breaker of {breaker_rating|0} does not protect {wire_size} wire, which may have {wire_breaker|0}. Choose a thicker wire_size on sheet Decisions.",
      { label: "Wire too thin for breaker" },
    ),
    circuit_drop: calc(
      voltageDrop,
      "VOLTAGE_DROP(circuit_current,panel_distance+wire_ends,wire_area)",
      "Voltage drop at pump",
      { note: "Over the conduit and the wire beyond it; the pump's own cord comes on top." },
    ),
    circuit_drop_share: calc(
      percent,
      "IF(supply_voltage>0,circuit_drop/supply_voltage,0)",
      "Share of the supply voltage",
      {
        strong: true,
      },
    ),
    drop_limit: office(percent, "Voltage drop limit", {
      default: 0.03,
      least: 0.005,
      most: 0.1,
      source: "NEC 210.19, informational note: 3% on a branch circuit, a design note and no rule (from memory)",
    }),
    circuit_drop_low: check(
      `OR(${byCustomer},circuit_drop_share<=drop_limit)`,
      "The circuit loses {circuit_drop_share} of its voltage over {panel_distance|0} of {wire_size}, more than {drop_limit}. Choose a thicker wire_size on sheet Decisions.",
      { label: "Voltage drop too high", level: "look" },
    ),
  });
