import {
  calc,
  check,
  count,
  input,
  length,
  lines,
  number,
  published,
  table,
  text,
  yesno,
} from "../../engine/template/index.js";
import { excavationSlopes } from "../tables/excavation.js";

const standard = "29 CFR 1926";

/** The dig against the excavation standard. A competent person decides on the site. */
export const safeDig = lines("Is the dig safe to stand in?", {
  dig_soil_type: input(text, "Soil type by a competent person", {
    default: excavationSlopes[0].name,
    choices: "safe_slopes.name",
  }),
  dig_protection: input(text, "Protection of the dig", {
    default: "none",
    choices: ["none", "sloped", "shored or shielded", "engineered"],
  }),
  cave_in_signs: input(yesno, "A competent person sees signs of a cave-in", { default: false }),
  deepest_dig: calc(length, "MAX(dig_depth, trench_depth)", "Deepest dig", { strong: true }),
  protection_depth: published(length, "Protection is needed from this depth", {
    value: 5,
    source: `${standard}.652(a)(1): unless all stable rock; below it, unless there are signs of a cave-in`,
  }),
  engineer_depth: published(length, "An engineer designs the protection over this depth", {
    value: 20,
    source: `${standard} Subpart P App. B`,
  }),
  safe_slope: calc(
    number,
    "INDEX(safe_slopes.run, MATCH(dig_soil_type, safe_slopes.name, 0))",
    "Steepest slope for that soil: run to 1 of height",
  ),
  safe_top_length: calc(
    length,
    "dig_bottom_length + 2 * safe_slope * dig_depth",
    "Length at the top, dug at that slope",
  ),
  safe_top_width: calc(
    length,
    "dig_bottom_width + 2 * safe_slope * dig_depth",
    "Width at the top, dug at that slope",
  ),
  protection_needed: calc(
    yesno,
    'AND(dig_soil_type <> "stable rock", OR(deepest_dig >= protection_depth, cave_in_signs))',
    "Protection against cave-in is needed",
    { strong: true },
  ),
  dig_protected: check(
    'OR(NOT(protection_needed), dig_protection = "shored or shielded", dig_protection = "engineered", AND(dig_protection = "sloped", dig_slope >= safe_slope, OR(trench_depth < protection_depth, dig_soil_type = "stable rock")))',
    "The deepest dig is {deepest_dig} in soil {dig_soil_type}, with protection {dig_protection} and basin sides at {dig_slope} to 1: from {protection_depth}, or with signs of a cave-in, it needs shoring, a shield, or sides no steeper than {safe_slope} to 1 (29 CFR 1926.652). Give the basin that slope, or shore; a trench that deep needs a shield.",
    { label: "The dig is protected against cave-in" },
  ),
  dig_within_tables: check(
    'OR(deepest_dig <= engineer_depth, dig_protection = "engineered")',
    "The deepest dig is {deepest_dig}; over {engineer_depth} a registered engineer designs its protection: have it designed.",
    { label: "No dig beyond the standard's tables" },
  ),
  ladder_depth: published(length, "A trench needs a way out from this depth", {
    value: 4,
    source: `${standard}.651(c)(2)`,
  }),
  ladder_travel: published(length, "No farther than this to the way out", {
    value: 25,
    source: `${standard}.651(c)(2)`,
  }),
  ladders_needed: calc(
    count,
    "IF(trench_depth >= ladder_depth, MAX(1, ROUNDUP(ROUND(trench_length / (2 * ladder_travel), 6), 0)), 0) + IF(dig_depth >= ladder_depth, MAX(1, ROUNDUP(ROUND(dig_bottom_length / (2 * ladder_travel), 6), 0)), 0)",
    "Ladders or ramps needed at a time",
  ),
  ladders_brought: input(count, "Ladders or ramps brought", {
    default: 1,
    least: 0,
    most: 100,
    whole: true,
  }),
  ladders_enough: check(
    "ladders_brought >= ladders_needed",
    "{ladders_brought} ladders are brought, but digs of {ladder_depth} and more need {ladders_needed}, none farther than {ladder_travel} away: bring them. 29 CFR 1926.651(c)(2) asks it of trenches; a basin as deep is counted too.",
    { label: "There is a way out of each deep dig" },
  ),
  spoil_least: published(length, "Spoil stays back from the edge by", {
    value: 2,
    source: `${standard}.651(j)(2)`,
  }),
  spoil_setback: input(length, "Spoil laid back from the edge", { default: 2, least: 0, most: 50 }),
  spoil_back: check(
    "spoil_setback >= spoil_least",
    "Spoil is laid {spoil_setback} from the edge, but must stay {spoil_least} back: find it another place (29 CFR 1926.651(j)(2)).",
    { label: "Spoil stays back from the edge" },
  ),
});

export const slopeTable = table(
  "safe_slopes",
  "Steepest slopes of digs under 20 ft (published)",
  { rows: excavationSlopes.length, data: excavationSlopes },
  {
    name: published(text, "Soil type", { source: "29 CFR 1926 Subpart P" }),
    run: published(number, "Run to 1 of height", { source: "see the last column" }),
    origin: published(text, "Source", { source: "as given" }),
  },
);
