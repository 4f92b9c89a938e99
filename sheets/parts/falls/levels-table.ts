import { calc, check, count, flow, head, length, table, yesno } from "../../../engine/template/index.js";
import { capacity } from "../capacity.js";
import { numberedRows, rowNumber } from "../numbered.js";

/** What each level needs, what enters there, how high it stands. */
export const levelsTable = table(
  "levels",
  "Levels: flow needed and supplied",
  {
    shown: "design_flow>0",
    ...numberedRows(capacity.falls, "number"),
    note: "Water that enters at a level passes all lower levels. The lines of a level bring what it lacks, and what the levels down to the next line lack.",
  },
  {
    number: rowNumber("Level"),
    in_use: calc(yesno, "LISTED(falls.level,number)", "In use"),
    design_flow: calc(flow, "SUM_WHERE(falls.design_flow,falls.level,number)", "Design flow"),
    lines_here: calc(count, "SUMPRODUCT((pipe_lines.outlet_level=number)*(pipe_lines.bore>0))", "Lines entering", {
      working: true,
    }),
    automatic_lines: calc(
      count,
      "SUM_WHERE(pipe_lines.automatic,pipe_lines.outlet_level,number)",
      "Lines on automatic flow",
      { working: true },
    ),
    override_flow: calc(flow, "SUM_WHERE(pipe_lines.fixed_flow,pipe_lines.outlet_level,number)", "Override flow", {
      working: true,
    }),
    stretch: calc(count, "above.stretch+IF(lines_here>0,1,0)", "Stretch", {
      first: "IF(lines_here>0,1,0)",
      working: true,
    }),
    stretch_design_flow: calc(
      flow,
      "LARGEST_WHERE(levels.design_flow,levels.stretch,stretch)",
      "Largest design flow, stretch",
      { working: true },
    ),
    added_flow: calc(
      flow,
      "IF(automatic_lines>0,MAX(0,stretch_design_flow-override_flow-above.planned_flow),0)",
      "Added by automatic lines",
      { first: "IF(automatic_lines>0,MAX(0,stretch_design_flow-override_flow),0)" },
    ),
    planned_flow: calc(flow, "above.planned_flow+override_flow+added_flow", "Planned flow", {
      first: "override_flow+added_flow",
    }),
    drop: calc(length, "LARGEST_WHERE(falls.drop_counted,falls.level,number)", "Drop"),
    lip_built: calc(length, "LARGEST_WHERE(falls.lip_built,falls.level,number)", "Widest lip to build"),
    run_fall: calc(head, "SUM_WHERE(runs.fall_counted,runs.after_level,number)", "Fall of its runs"),
    height: calc(
      head,
      "IF(in_use,SUMPRODUCT((levels.number>=number)*(levels.drop+levels.run_fall))+rim_above_water,0)",
      "Height above basin water",
      { strong: true },
    ),
    actual_flow: calc(flow, "SUMPRODUCT((pipe_lines.outlet_level<=number)*pipe_lines.actual_flow)", "Actual flow", {
      strong: true,
    }),
    throw_out: calc(length, "LARGEST_WHERE(falls.throw,falls.level,number)", "Throw of its water", { working: true }),
    way_on: calc(
      length,
      "SUM_WHERE(runs.length_counted,runs.after_level,number)+SUM_WHERE(pools.length_counted,pools.before_level,number+1)",
      "Way to next lip",
      { working: true, note: "Runs and pool between them, along the middle." },
    ),
    lands_before_next: check(
      "OR(NOT(in_use),NOT(LISTED(falls.level,number+1)),way_on>=throw_out)",
      "Level {number|0} throws its water {throw_out} out, but its next lip follows after {way_on}. Enter the run or pool between them on sheet Walk.",
      { label: "Landing missing", level: "look" },
    ),
    has_line: check(
      "OR(NOT(in_use),stretch>0)",
      "Level {number|0} has falls, but no line enters there or higher: give a line the outlet level 1 on sheet Walk.",
      { label: "Level without water" },
    ),
  },
);
