import {
  area,
  calc,
  check,
  count,
  decide,
  flow,
  length,
  number,
  precise,
  smallLength,
  speed,
  table,
  text,
  walk,
} from "../../../engine/template/index.js";
import { plusInches } from "../../vocabulary/feet-and-inches.js";
import { waterVolume } from "../../vocabulary/quantities.js";
import { capacity } from "../capacity.js";
import { nameUnique } from "../name-unique.js";

const ofBed = (column: string) => `PICK(beds.${column},beds.name,bed)`;

/** A run is calculated once its row says where it lies, how long it is and on what it runs. */
export const runInUse = "AND(length+length_plus>0,after_level>0,LEN(bed)>0)";

const ofStream = { section: "Stream" } as const;

/** One row for each stretch of stream. */
export const runsTable = table(
  "runs",
  "Stream runs, between falls",
  {
    section: "Stream runs",
    rows: capacity.runs,
    opening: 1,
    filled: runInUse,
    note: "Length along the middle of the bed.",
  },
  {
    name: walk(text, "Run", { default: "Run" }),
    after_level: walk(count, "After level", {
      default: 1,
      least: 1,
      most: capacity.falls,
      whole: true,
    }),
    length: walk(length, "Length", { least: 0, most: 500 }),
    length_plus: plusInches("Length"),
    width: walk(length, "Bed width", { default: 3, least: 0.25, most: 60 }),
    width_plus: plusInches("Bed width"),
    fall: walk(length, "Fall", {
      optional: true,
      least: 0,
      most: 50,
      note: "Blank: from the rod readings, else the office's usual fall.",
    }),
    fall_plus: plusInches("Fall"),
    side: decide(number, "Side slope, horizontal to 1", { ...ofStream, default: 1, least: 0, most: 6 }),
    bed: decide(text, "Bed", { ...ofStream, default: "cobble", choices: "beds.name" }),
    bank_height: decide(length, "Bank height", { ...ofStream, default: 0.75, least: 0.1, most: 10 }),
    bed_laid: calc(text, "bed", "Bed laid"),
    length_counted: calc(length, "length+length_plus", "Length counted"),
    width_counted: calc(length, "width+width_plus", "Bed width counted"),
    rod_fall: calc(
      length,
      "PICK(elevations.rod_fall,elevations.level,after_level)*length_counted/MAX(0.01[ft],SUM_WHERE(runs.length_counted,runs.after_level,after_level))",
      "Fall by rod",
      { zero: "–", note: "Its part, by length, of what the rod readings give for the runs after its level." },
    ),
    fall_counted: calc(
      length,
      "IF(AND(ISBLANK(fall),ISBLANK(fall_plus)),IF(rod_fall>0,rod_fall,usual_run_fall),fall+fall_plus)",
      "Fall counted",
    ),
    bank_counted: calc(length, "bank_height", "Bank height, counted"),
    flow: calc(flow, "IF(width_counted>0,PICK(levels.actual_flow,levels.number,after_level),0)", "Actual flow"),
    stone_size: calc(smallLength, ofBed("stone_size"), "Stone size, D84"),
    slope: calc(precise, "MAX(fall_counted/length_counted,0.0001)", "Slope", { decimals: 4 }),
    depth_likely: calc(smallLength, (row) => `INDEX(stream_depths.depth_fourth,${row})`, "Depth, calculated", {
      note: "Rough where it is less than the size of the bed's stone: Crew has the water run before the banks are set.",
    }),
    depth_manning: calc(smallLength, (row) => `INDEX(stream_depths.manning_third,${row})`, "Depth by Manning"),
    depth: calc(smallLength, "depth_likely*(1+depth_allowance)", "Depth to plan for", {
      strong: true,
    }),
    area_likely: calc(area, "CHANNEL_AREA(width_counted,depth_likely,side)", "Cross-section, calculated", {
      decimals: 2,
    }),
    speed: calc(speed, "IF(flow>0,flow/area_likely,0)", "Speed"),
    froude: calc(number, "IF(flow>0,FROUDE(speed,area_likely,width_counted+2*side*depth_likely),0)", "Froude number"),
    water_held: calc(waterVolume, "CHANNEL_AREA(width_counted,depth,side)*length_counted", "Water held while running"),
    surface: calc(area, "(width_counted+2*side*depth)*length_counted", "Water surface"),
    water_in_bed: calc(
      waterVolume,
      `IF(flow>0,(width_counted+2*depth*SQRT(1+side^2))*length_counted*bed_stone_depth*${ofBed("voids")},0)`,
      "Water in bed stone",
      { note: "Over the wetted bed and sides." },
    ),
    name_unique: nameUnique("runs", "runs.length_counted>0"),
    level_exists: check(
      "LISTED(falls.level,after_level)",
      "{name} follows level {after_level|0}, which has no fall: enter a level with a fall on sheet Walk.",
      { label: "Level without a fall" },
    ),
    runs_down: check(
      "fall_counted>=0.01[ft]",
      "{name} has no fall, so its water does not run. Enter its fall, or the rod readings at both ends, on sheet Walk.",
      { label: "Run without fall" },
    ),
    banks_hold: check(
      "depth+freeboard<=bank_height",
      "{name}: {depth} of water, allowance included, and {freeboard} of freeboard pass its banks of {bank_height}. Raise the banks or widen the bed.",
      { label: "Banks too low" },
    ),
    depth_settled: check(
      (row) => `OR(flow<=0,ABS(INDEX(stream_depths.flow_back,${row})-1)<=0.001)`,
      "{name}: the depth found does not carry the flow within 0.1 %. Check its bed width, fall and side slope on sheet Walk.",
      { label: "Depth not converged" },
    ),
    laws_agree: check(
      "OR(depth_likely<4*stone_size,ABS(depth_manning-depth_likely)<=0.15*depth_likely)",
      "{name}: {depth_likely} deep by Ferguson, {depth_manning} by Manning, over 15 % apart. Cover the deeper with the depth allowance on sheet Office rules.",
      { label: "Depth formulas disagree", level: "look" },
    ),
    runs_calm: check(
      "froude<0.85",
      "{name} runs at Froude number {froude}: from 0.85 on waves stand and splash. Flatten the bed, or plan the liner wider.",
      { label: "Near-critical flow", level: "look" },
    ),
  },
);
