import { area, calc, check, count, decide, length, smallLength, text, yesno } from "../../../engine/template/index.js";
import { waterVolume } from "../../vocabulary/quantities.js";
import type { LineEnds } from "../line-ends.js";

/** What keeps a line from drawing off the water that it ends in when the pump stops. */
export const siphonStops = ["nothing", "end above water", "check valve", "air break"] as const;

export const isStoppedBy = (way: (typeof siphonStops)[number]) => `siphon_stop="${way}"`;

/** Where the line ends, and in what. */
export const siphonInputs = {
  siphon_stop: decide(text, "Siphon stopped by", {
    default: "nothing",
    choices: siphonStops,
    note: "At a stop a line that ends under water draws it off, down to its end, unless its own check valve or an air break stops that.",
  }),
  end_below_water: decide(smallLength, "Outlet below resting water", {
    optional: true,
    least: 0,
    most: 120,
    note: "Blank: at the bottom of the pool or pot, so that all of its water drains.",
  }),
  pot_surface: decide(area, "Pot's water surface", {
    default: 0,
    least: 0,
    most: 200,
    note: "Of a header basin that this line fills, or of a pot that is not in the list of pots; 0 where it ends in a pool of the stream, or in the open.",
  }),
  pot_depth: decide(smallLength, "Pot's depth of water", { default: 0, least: 0, most: 120 }),
  pot_rise: decide(length, "Pot water above level", {
    default: 0,
    least: 0,
    most: 20,
    note: "How much higher the water of a raised pot stands than that above the lip of its level. The pump lifts this too, and the pot keeps its siphon.",
  }),
};

/** What the line is told of its pot; without, the pot of its level, which the first line there fills. */
export const ofPot = (given: string, column: "surface" | "deep", row: number) =>
  `IF(pot_surface>0,${given},IF(PLACE_OR_ZERO(pipe_lines.outlet_level,outlet_level)=${row},SUM_WHERE(pots.${column},pots.level,outlet_level),0))`;

/**
 * What a stop draws off through the line, by hydrostatics. A check valve in the main keeps
 * water from the pump, but open lines stay joined at the manifold: those that end higher run
 * out through the lowest.
 */
export const siphonResults = (ends: LineEnds) => ({
  lower_lines: calc(
    count,
    "SUMPRODUCT((pipe_lines.height<height-0.01[ft])*pipe_lines.open_line)",
    "Open lines that end lower",
  ),
  drains: calc(
    yesno,
    `AND(NOT(shut),NOT(${isStoppedBy("check valve")}),OR(NOT(check_valve_fitted),lower_lines>0))`,
    "Runs empty at a stop",
  ),
  siphons: calc(
    yesno,
    `AND(drains,NOT(in_the_open),${ends.mouthUnder},NOT(${isStoppedBy("air break")}))`,
    "Siphons at a stop",
  ),
  line_drained: calc(waterVolume, "IF(drains,water_in_pipe,0)", "Drain-back from line", {
    decimals: 1,
  }),
  pot_area: calc(area, ends.vesselArea, `${ends.vessel}'s water surface counted`),
  pot_deep: calc(smallLength, ends.vesselDeep, `${ends.vessel}'s depth counted`),
  pot_water: calc(waterVolume, "pot_area*pot_deep", `Water in the ${ends.vessel.toLowerCase()}`, {
    working: true,
    decimals: 1,
    note: "As if its sides were upright.",
  }),
  depth_there: calc(smallLength, `IF(pot_water>0,pot_deep,${ends.openDeep})`, `Depth of ${ends.water}`),
  in_the_open: calc(yesno, ends.inTheOpen, "Ends in the open", {
    note: `No water is named for it to end in: no ${ends.water}, no end below water.`,
  }),
  siphon_depth: calc(
    smallLength,
    "IF(siphons,MIN(depth_there,IF(ISBLANK(end_below_water),depth_there,end_below_water)),0)",
    "Depth siphoned",
  ),
  pot_siphoned: calc(
    waterVolume,
    "IF(pot_water>0,pot_area*siphon_depth,0)",
    `Siphoned from the ${ends.vessel.toLowerCase()}`,
    {
      decimals: 1,
    },
  ),
  pool_drawn: calc(smallLength, "IF(pot_water>0,0,siphon_depth)", "Water there drawn down by"),
  ...ends.words,
});

/** Contradictions, and water that nobody has counted. */
export const siphonChecks = {
  pot_given: check(
    "OR(pot_rise<=0,pot_water>0)",
    "{name} has no pot, but pot water {pot_rise} above its level. Enter the pot's surface and depth on sheet Decisions.",
    { label: "Raised pot without a size" },
  ),
  pot_siphon_answered: check(
    `OR(pot_water<=0,above_water<=0,shut,NOT(${isStoppedBy("nothing")}))`,
    "{name} ends {above_water} above its pot's water, yet nothing stops a siphon: enter a raised pot's pot_rise, or choose what stops it.",
    { label: "Raised pot or raised end" },
  ),
  end_is_above: check(
    `OR(NOT(${isStoppedBy("end above water")}),above_water>0)`,
    "{name} is to end over the water, but pipe end above water is 0: enter that height on sheet Decisions.",
    { label: "Outlet not above water" },
  ),
  break_has_height: check(
    `OR(shut,NOT(${isStoppedBy("air break")}),above_water>0,is_measured)`,
    "{name}: the pump must lift to its air break, but its height is missing: enter pipe end above water on sheet Decisions.",
    { label: "Air break without height", level: "look" },
  ),
  siphon_counted: check(
    "OR(NOT(siphons),depth_there>0)",
    "{name} ends under water at level {outlet_level|0}, but no pool or pot is given there. Enter the pot's surface and depth on sheet Decisions.",
    { label: "Siphoned water not counted" },
  ),
};
