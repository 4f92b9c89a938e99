import { calc, published, type TableBlock, table, text } from "../../../engine/template/index.js";

/** What a job usually has, why, and the condition that this bid has it. */
const needs = [
  ["fill line", "water lost each day is carried by hand", "fill_line_length>0"],
  ["circuit of the pump", "the customer must have it ready in time", 'electrical_work<>"by the customer"'],
  ["valve box", "a valve in the ground cannot be set again", "valve_boxes>0"],
  ["winter drain", "water left in a pipe bursts it in frost", "winter_drain"],
  ["underlayment", "stones and roots wear through a liner", "underlayment_sides>0"],
  ["filter fabric", "gravel fills the crates", "fabric_area>0"],
  ["way for leftover dirt", "dirt without a place stays in the yard", "OR(haul_loads>0,dirt_stays,haul_volume<=0)"],
  ["lawn repair", "machine, barrows and trenches leave marks", "lawn_area>0"],
  ["plants or mulch", "bare edges show the liner", "plants_wanted+planting_bed/1[ft²]>0"],
  ["lights", "asked for once the trenches are closed", "lights_wanted>0"],
  ["permits", "a circuit, wall or pond may need one", "permits_paid>0"],
  ["risk allowance", "rock, water or a lost pipe comes out of the profit", "SUM(risks.high)>0"],
] as const;

const source = "common practice, no source";

/** For the estimator to go through: what is left out may be meant so. */
export const usualNeeds: TableBlock = table(
  "usual_needs",
  "What a job usually has",
  {
    rows: needs.length,
    data: needs.map(([need, reason]) => ({ need, reason })),
    note: "Left out may be right; it should be meant. Beside each need stands what is missed without it.",
  },
  {
    need: published(text, "Need", { source }),
    here: calc(text, (row) => `IF(${needs[row - 1]?.[2] ?? "FALSE"},"in bid","LEFT OUT")`, "Here"),
    reason: published(text, "Without it", { source }),
  },
);
