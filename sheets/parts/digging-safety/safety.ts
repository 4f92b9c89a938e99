import {
  area,
  calc,
  check,
  count,
  date,
  decide,
  length,
  lines,
  number,
  office,
  published,
  table,
  text,
  walk,
  yesno,
} from "../../../engine/template/index.js";
import { excavationSlopes } from "../../tables/excavation.js";
import { oneOf } from "../../vocabulary/one-of.js";
import type { Whole } from "../brought.js";
import { held } from "../held.js";

const standard = "29 CFR 1926";
const notLooked = "not looked at yet";

/** The dig against the excavation standard. A competent person decides on the site. */
export const safeDig = ({ cellsAt }: Pick<Whole, "cellsAt">) =>
  lines("Dig safety", {
    dig_soil_type: walk(text, "Soil type", {
      section: "Soil",
      note: `As a competent person classifies it, ${oneOf(excavationSlopes)}`,
      default: excavationSlopes[0].name,
      choices: "safe_slopes.name",
    }),
    dig_protection: decide(text, "Protection of the basin", {
      default: "none",
      choices: ["none", "sloped", ...held],
      note: "Sloped: at the run that the sheet Decisions gives its sides.",
    }),
    trench_protection: decide(text, "Protection of the trench", {
      default: "none",
      choices: ["none", ...held],
    }),
    ...cellsAt("dig safety"),
    wall_protection: decide(text, "Protection of wall footings", {
      default: "none",
      choices: ["none", ...held],
    }),
    cave_in_signs: decide(text, "Signs of a cave-in", {
      default: notLooked,
      choices: [notLooked, "no signs", "signs"],
      note: "What a competent person saw on the day of the dig: one trained to see hazards, and with the power to stop the work.",
      source: `${standard}.32(f), .651(k)`,
    }),
    dig_inspected_by: decide(text, "Inspected by", { optional: true }),
    dig_inspected_on: decide(date, "Inspected on", { optional: true }),
    cave_in_seen: calc(yesno, 'cave_in_signs = "signs"', "Cave-in signs seen", { working: true }),
    inspection_recorded: calc(
      yesno,
      `AND(cave_in_signs<>"${notLooked}",LEN(dig_inspected_by)>0,NOT(ISBLANK(dig_inspected_on)))`,
      "Inspection recorded",
      { working: true, note: "With name and date." },
    ),
    inspection_depth: office(length, "Inspection needed from", {
      default: 3,
      least: 0,
      most: 4,
      note: "The standard exempts no depth. ‹4 ft|1.2 m› at most, where a trench also needs a way out.",
      source: "common practice, no source",
    }),
    digs_to_inspect: calc(text, 'TEXTJOIN(", ", TRUE, digs.entered)', "Digs to inspect", { working: true }),
    dig_inspected: calc(yesno, "OR(LEN(digs_to_inspect)=0,inspection_recorded)", "Dig inspected", {
      working: true,
      note: "No dig is there to be looked at while the bid is made: until it is, Crew says STOP.",
      source: `${standard}.652(a)(1)`,
    }),
    deepest_dig: calc(length, "MAX(digs.deep)", "Deepest dig", { strong: true }),
    deepest_place: calc(text, "PICK(digs.place,digs.deep,deepest_dig)", "Place of the deepest dig", {
      working: true,
    }),
    protection_depth: published(length, "Protection needed from", {
      working: true,
      value: 5,
      source: `${standard}.652(a)(1): unless all stable rock; below it, unless there are signs of a cave-in`,
    }),
    engineer_depth: published(length, "Engineered protection needed over", {
      working: true,
      value: 20,
      source: `${standard} Subpart P App. B`,
    }),
    safe_slope: calc(
      number,
      "IF(ISBLANK(dig_soil_type),0,PICK(safe_slopes.run,safe_slopes.name,dig_soil_type))",
      "Steepest dig slope, run:1",
      { working: true },
    ),
    protection_needed: calc(yesno, "SUMPRODUCT((digs.needed=TRUE)*1)>0", "Protection needed anywhere", {
      strong: true,
    }),
    shored_face: calc(area, "SUM(digs.face)", "Face to shore", {
      strong: true,
      zero: "0",
      note: "Hired and set as a whole; where a shield is moved along, set its own rate in the office book.",
    }),
    digs_engineered: calc(count, 'COUNT_WHERE(digs.by, "engineered")', "Digs with engineered protection", {
      working: true,
    }),
    dig_within_tables: check(
      'SUMPRODUCT((digs.deep > engineer_depth) * (digs.by <> "engineered")) = 0',
      "{deepest_place} is dug {deepest_dig} deep; over {engineer_depth} a registered engineer designs its protection. Have it designed, and choose engineered on sheet Decisions.",
      { label: "Dig beyond the standard's tables" },
    ),
    ladder_depth: published(length, "Ladder needed from", { working: true, value: 4, source: `${standard}.651(c)(2)` }),
    ladder_travel: published(length, "Farthest way to a ladder", {
      working: true,
      value: 25,
      source: `${standard}.651(c)(2)`,
    }),
    ladders_needed: calc(count, "SUM(digs.ways_out)", "Ladders or ramps needed"),
    ladders_brought: decide(count, "Ladders or ramps brought", {
      default: 1,
      least: 0,
      most: 100,
      whole: true,
    }),
    ladders_enough: check(
      "ladders_brought>=ladders_needed",
      "Digs of {ladder_depth} and more need {ladders_needed|0} ladders, none farther than {ladder_travel}, but ladders_brought is {ladders_brought|0}. Enter more on sheet Decisions.",
      {
        label: "Too few ways out",
        note: "29 CFR 1926.651(c)(2) asks it of trenches; other digs as deep are counted too.",
      },
    ),
    dirt_setback_least: published(length, "Least dirt setback", {
      working: true,
      value: 2,
      source: `${standard}.651(j)(2)`,
    }),
    dirt_setback: office(length, "Dirt setback", { default: 2, least: 0, most: 50 }),
    dirt_set_back: check(
      "dirt_setback>=dirt_setback_least",
      "Dirt is laid {dirt_setback} from the edge, but must stay {dirt_setback_least} back. Enter a larger dirt_setback on sheet Office rules (29 CFR 1926.651(j)(2)).",
      { label: "Dirt too near the edge" },
    ),
  });

export const slopeTable = table(
  "safe_slopes",
  "Steepest dig slopes (published)",
  { working: true, rows: excavationSlopes.length, data: excavationSlopes },
  {
    name: published(text, "Soil type", { source: "29 CFR 1926 Subpart P" }),
    run: published(number, "Run to 1 of height", { source: "see the last column" }),
    origin: published(text, "Source", { source: "as given" }),
  },
);
