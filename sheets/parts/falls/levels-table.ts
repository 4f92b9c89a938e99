import { calc, check, count, flow, head, table, yesno } from "../../../engine/template/index.js";
import { capacity } from "../capacity.js";

/** What each step needs, what enters there, how high it stands. */
export const levelsTable = table(
  "levels",
  "Steps: what each needs and gets",
  {
    rows: capacity.falls,
    note: "Water that enters at a step passes all steps below it. The outlets of a step bring what it and the steps below, down to the next outlet, lack.",
  },
  {
    number: calc(count, "above.number+1", "Level", { first: "1" }),
    in_use: calc(yesno, "LISTED(falls.level,number)", "In use"),
    design_flow: calc(flow, "SUM_WHERE(falls.design_flow,falls.level,number)", "Design flow"),
    lines_here: calc(
      count,
      "SUMPRODUCT((pipe_lines.outlet_level=number)*(pipe_lines.bore>0))",
      "Outlets that enter here",
    ),
    automatic_lines: calc(
      count,
      "SUM_WHERE(pipe_lines.automatic,pipe_lines.outlet_level,number)",
      "Lines on automatic flow",
    ),
    override_flow: calc(
      flow,
      "SUM_WHERE(pipe_lines.fixed_flow,pipe_lines.outlet_level,number)",
      "Override flow",
    ),
    stretch: calc(count, "above.stretch+IF(lines_here>0,1,0)", "Stretch fed by them", {
      first: "IF(lines_here>0,1,0)",
    }),
    stretch_design_flow: calc(
      flow,
      "LARGEST_WHERE(levels.design_flow,levels.stretch,stretch)",
      "Most wanted, stretch",
    ),
    added_flow: calc(
      flow,
      "IF(automatic_lines>0,MAX(0,stretch_design_flow-override_flow-above.planned_flow),0)",
      "Lacking, for the outlets without one",
      { first: "IF(automatic_lines>0,MAX(0,stretch_design_flow-override_flow),0)" },
    ),
    planned_flow: calc(flow, "above.planned_flow+override_flow+added_flow", "Planned flow", {
      first: "override_flow+added_flow",
    }),
    drop: calc(head, "LARGEST_WHERE(falls.drop_counted,falls.level,number)", "Drop"),
    run_fall: calc(head, "SUM_WHERE(runs.fall,runs.after_level,number)", "Fall of its runs"),
    height: calc(
      head,
      "IF(in_use,SUMPRODUCT((levels.number>=number)*(levels.drop+levels.run_fall))+rim_above_water,0)",
      "Water above the basin's",
      { strong: true },
    ),
    actual_flow: calc(
      flow,
      "SUMPRODUCT((pipe_lines.outlet_level<=number)*pipe_lines.actual_flow)",
      "Actual flow",
      { strong: true },
    ),
    has_line: check(
      "OR(NOT(in_use),stretch>0)",
      "Step {number|0} has falls, but no outlet enters there or above: let an outlet enter at the top step.",
      { label: "Fed" },
    ),
  },
);
