import { calc, check, count, flow, head, table, yesno } from "../../../engine/template/index.js";

/** What each step needs, what enters there, how high it stands. */
export const stepsTable = table(
  "steps",
  "Steps: what each needs and gets",
  {
    rows: 12,
    note: "Water that enters at a step passes all steps below it. The outlets of a step bring what it and the steps below, down to the next outlet, lack.",
  },
  {
    number: calc(count, "above.number+1", "Step", { first: "1" }),
    in_use: calc(yesno, "LISTED(falls.step,number)", "In use"),
    wanted: calc(flow, "SUM_WHERE(falls.flow_wanted,falls.step,number)", "Flow wanted"),
    outlets_here: calc(
      count,
      "SUMPRODUCT((outlets.enters=number)*(outlets.bore>0))",
      "Outlets that enter here",
    ),
    open_outlets: calc(
      count,
      "SUM_WHERE(outlets.open_part,outlets.enters,number)",
      "Of these, without a flow chosen",
    ),
    chosen: calc(flow, "SUM_WHERE(outlets.flow_fixed,outlets.enters,number)", "Flow chosen here"),
    stretch: calc(count, "above.stretch+IF(outlets_here>0,1,0)", "Stretch fed by them", {
      first: "IF(outlets_here>0,1,0)",
    }),
    most_wanted: calc(
      flow,
      "LARGEST_WHERE(steps.wanted,steps.stretch,stretch)",
      "Most wanted, stretch",
    ),
    to_bring: calc(
      flow,
      "IF(open_outlets>0,MAX(0,most_wanted-chosen-above.planned),0)",
      "Lacking, for the outlets without one",
      { first: "IF(open_outlets>0,MAX(0,most_wanted-chosen),0)" },
    ),
    planned: calc(flow, "above.planned+chosen+to_bring", "Flow planned", {
      first: "chosen+to_bring",
    }),
    drop: calc(head, "LARGEST_WHERE(falls.drop_counted,falls.step,number)", "Drop"),
    reach_fall: calc(
      head,
      "SUM_WHERE(reaches.fall,reaches.after_step,number)",
      "Fall of its reaches",
    ),
    level: calc(
      head,
      "IF(in_use,SUMPRODUCT((steps.number>=number)*(steps.drop+steps.reach_fall))+rim_above_water,0)",
      "Water above the basin's",
      { strong: true },
    ),
    flow_as_set: calc(
      flow,
      "SUMPRODUCT((outlets.enters<=number)*outlets.flow_as_set)",
      "Flow as set",
      { strong: true },
    ),
    fed: check(
      "OR(NOT(in_use),stretch>0)",
      "Step {number|0} has falls, but no outlet enters there or above: let an outlet enter at the top step.",
      { label: "Fed" },
    ),
  },
);
