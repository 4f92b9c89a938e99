import {
  calc,
  check,
  decide,
  flow,
  head,
  lines,
  office,
  power,
  precise,
  yesno,
} from "../../../engine/template/index.js";

const asBought = "common practice, no source: take the figures of the clarifier that is bought";

/** A lamp in the main that keeps algae from clouding the water. */
export const clarifier = lines("Ultraviolet clarifier", {
  clarifier_included: decide(yesno, "Clarifier in the main", { default: false }),
  clarifier_watts: office(power, "Power", { default: 40, least: 5, most: 1000, source: asBought }),
  clarifier_flow_limit: office(flow, "Flow limit", {
    default: 40,
    least: 1,
    most: 1000,
    note: "Above it the light has too little time to work on the water.",
    source: asBought,
  }),
  clarifier_loss: office(head, "Head loss at flow limit", {
    default: 1,
    least: 0,
    most: 20,
    decimals: 1,
    source: asBought,
  }),
  clarifier_local: calc(
    precise,
    "IF(clarifier_included,clarifier_loss/1[ft]/(MAX(1[gal/min],clarifier_flow_limit)/1[gal/min])^2,0)",
    "Loss coefficient",
    { working: true, decimals: 7, note: "It loses head as the square of the flow, whatever the main's size." },
  ),
  clarifier_load: calc(power, "IF(clarifier_included,clarifier_watts,0[W])", "Load", { working: true }),
  clarifier_in_limit: check(
    "OR(NOT(clarifier_included),total_flow<=clarifier_flow_limit)",
    "{total_flow} run through the clarifier, its limit is {clarifier_flow_limit}. Choose a larger one, or leave it out.",
    { label: "Clarifier overrun" },
  ),
});
