import { calc, check, count, decide, flow, head, length, text, walk, yesno } from "../../../engine/template/index.js";
import { bulletEachRow, eachRow } from "../../plan/page-line.js";
import { capacity } from "../capacity.js";
import type { LineEnds } from "../line-ends.js";
import { poolSiphons } from "./pool-siphons.js";
import { isStoppedBy, ofPot, siphonChecks, siphonInputs } from "./siphon.js";

/** What the walk asks of a line; the rest of it is decided. */
const onWalk = "Pipe lines";

/** Lines that end at the levels of falls, in their pools, pots, or in the open. */
export const toFalls: LineEnds = {
  section: "Lines and pots",
  note: "A row is in use once its level is given; pipe size and fittings are chosen on sheet Decisions. Each line has a ball valve.",
  told: "outlet_level>0",
  first: {
    name: walk(text, "Line", { section: onWalk, default: "Line" }),
    outlet_level: walk(count, "Outlet at level", {
      section: onWalk,
      again: true,
      default: 1,
      least: 1,
      most: capacity.falls,
      whole: true,
    }),
  },
  inputs: {
    above_water: decide(length, "Pipe end above water", {
      optional: true,
      least: 0,
      most: 10,
      note: "Above the water of the pool or pot that it ends in. 0 where it ends under water: it then discharges against that level. Blank: under water where its level has a pool or pot, else in the open. With an air break: how far that stands above the water, for the pump must lift to it.",
    }),
    ...siphonInputs,
    measured_height: decide(head, "Measured height", {
      optional: true,
      least: 0,
      most: 500,
      note: "Above the running basin water. Blank: by rod, else drops, runs, rim and pot added up.",
    }),
    rod_end: walk(length, "Rod at pipe end", {
      section: onWalk,
      optional: true,
      least: 0.01,
      most: 100,
      note: "Where the water leaves the pipe, or the air break. Counts where no height is measured directly.",
    }),
    override_flow: decide(flow, "Override flow", {
      optional: true,
      least: 0,
      most: 2000,
      note: "Blank: an even part of what the level lacks.",
    }),
  },
  flowAndHeight: {
    automatic: calc(count, "IF(ISBLANK(override_flow),1,0)", "Automatic flow"),
    fixed_flow: calc(flow, "IF(ISBLANK(override_flow),0,override_flow)", "Fixed flow", { zero: "–" }),
    design_flow: calc(
      flow,
      "fixed_flow+IF(automatic>0,PICK(levels.added_flow,levels.number,outlet_level)/PICK(levels.automatic_lines,levels.number,outlet_level),0)",
      "Design flow",
      { strong: true },
    ),
    calculated_height: calc(
      head,
      "PICK(levels.height,levels.number,outlet_level)+pot_rise+above_water",
      "Calculated height",
    ),
    rod_height: calc(head, "IF(AND(rod_end>0,rod_rim>0),rim_above_water+rod_rim-rod_end,0)", "Height by rod"),
    is_measured: calc(yesno, "OR(NOT(ISBLANK(measured_height)),rod_height>0)", "Measured"),
    height: calc(
      head,
      "IF(ISBLANK(measured_height),IF(is_measured,rod_height,calculated_height),measured_height)",
      "Height above basin water",
    ),
  },
  vessel: "Pot",
  water: "pool or pot",
  vesselArea: (row) => ofPot("pot_surface", "surface", row),
  vesselDeep: (row) => ofPot("pot_depth", "deep", row),
  openDeep: "LARGEST_WHERE(pools.depth_counted,pools.before_level,outlet_level)",
  inTheOpen: `AND(ISBLANK(above_water),depth_there<=0,${isStoppedBy("nothing")})`,
  mouthUnder: "above_water<=0",
  words: {
    above_said: calc(text, "~{above_water|up}", "Height of end, in words", { reader: "crew" }),
    drawn_said: calc(text, "~{siphon_depth|down}", "Depth of end, in words", { reader: "crew" }),
    siphon_words: calc(
      text,
      'IF(shut,"",IF(in_the_open,"end in the open, above any standing water",SIPHON_SAID(siphon_stop,above_water,above_said,siphon_depth,drawn_said)))',
      "Siphon stop for crew",
    ),
  },
  endChecks: {
    level_exists: check(
      "LISTED(falls.level,outlet_level)",
      "{name} enters at level {outlet_level|0}, which has no fall: enter a level with a fall on sheet Walk.",
      { label: "Level without a fall" },
    ),
  },
  siphonChecks,
  flowChecks: {
    left_dry: calc(yesno, "AND(automatic>0,ISBLANK(override_valve_setting),design_flow<=0)", "Left dry by level", {
      note: "Its flow is left blank, and its level lacks none. A flow of 0 shuts it on purpose.",
    }),
    pot_gets_flow: check(
      "OR(pot_water<=0,NOT(left_dry))",
      "{name} fills a pot, but its level lacks no flow, so it gets none: enter its override flow on sheet Decisions (0 keeps it shut).",
      { label: "Pot without flow" },
    ),
    gets_flow: check(
      "OR(pot_water>0,NOT(left_dry))",
      "{name} is bought, but its level lacks no flow, so it gets none: enter its override flow on sheet Decisions (0 keeps it shut).",
      { label: "Line without flow", level: "look" },
    ),
  },
  someLines: "enter one on sheet Walk, at a level with a fall, and its pipe size on sheet Decisions",
  heightSums: "drops, runs, rim and pot make {calculated_height}",
  drawn: {
    outlet_along: calc(
      length,
      "IF(used>0,PICK_OR(course.pool_along,course.level,outlet_level,0[ft]),pipe_rises_along)",
      "Outlet, along",
    ),
    outlet_up: calc(head, "IF(used>0,height-rim_above_water,pipe_rises_to)", "Outlet, up"),
  },
  toldAs: "~{name}, to level {outlet_level|0}",
  behind: [poolSiphons],
  crew: (lines) =>
    eachRow(
      "stop: water",
      lines,
      "STOP. What a stop draws off through {name} is not counted: the basin may spill. Set no fill float before the office has entered what that line ends in.",
      { when: "NOT(siphon_counted)" },
    ),
  fitted: (lines) =>
    bulletEachRow(
      "step: pipe",
      lines,
      "{name}: set its pot so that its water stands {pot_rise} above the water of level {outlet_level|0}.",
      { when: "pot_rise>0" },
    ),
  proposal: (lines) =>
    bulletEachRow(
      "scope",
      lines,
      "{name}: here the water rises in a small open basin of about {pot_surface|0}, up to {pot_depth|0|up} deep.",
      { when: "pot_surface*pot_depth>0" },
    ),
};
