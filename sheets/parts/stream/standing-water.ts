import { calc, length, lines, published, smallLength, text } from "../../../engine/template/index.js";

const ordinances =
  "municipal pool ordinances after the ISPSC and IRC; editions and places differ, the local code decides";

/** Water that stands open, against children and the code of pools. */
export const standingWater = lines("Standing water and children", {
  barrier_depth: published(smallLength, "Water depth needing a barrier", {
    working: true,
    value: 24,
    source: ordinances,
  }),
  barrier_height: published(smallLength, "Barrier height", {
    working: true,
    value: 48,
    source: `${ordinances}; no opening that a 4 in ball passes`,
  }),
  drowning_depth: published(smallLength, "Drowning depth, children", {
    working: true,
    value: 2,
    source: "US Consumer Product Safety Commission: 1 to 2 in (from memory)",
  }),
  deepest_water: calc(length, "MAX(pools.water_depth)", "Deepest standing water", {
    strong: true,
    zero: "0",
  }),
  barrier_words: calc(
    text,
    "~Pool water up to {deepest_water|up} deep: over {barrier_depth|0} many places ask for a barrier {barrier_height|0} high around it. The building office decides, before it is filled.",
    "Caution for deep water",
    { working: true, reader: "customer" },
  ),
  drowning_words: calc(
    text,
    "~Pool water up to {deepest_water|up} deep: a child can drown in ‹2 in|5 cm›. Never leave small children alone near it.",
    "Caution for shallow water",
    { working: true, reader: "customer" },
  ),
  child_caution: calc(
    text,
    'IF(deepest_water > barrier_depth, barrier_words, IF(deepest_water >= drowning_depth, drowning_words, ""))',
    "Caution told on paper",
  ),
});
