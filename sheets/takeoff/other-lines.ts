import type { OwnLine } from "./pipe-lines.js";

/** What the pipes and the current need besides: figures by common practice, no source. */
export const otherLines: readonly OwnLine[] = [
  {
    what: "reducer bushings, main to branch",
    code: "reducer",
    wanted: "SUMPRODUCT((outlets.bore>0)*(outlets.pipe_size<>main_size))",
    unit: "each",
    waste: 0,
  },
  {
    what: "pipe cement, a can for each 25 joints",
    code: "adhesive",
    wanted: "pipe_joints/25",
    unit: "each",
    waste: 0,
  },
  {
    what: "mortar of the beds, a bag for each 0.6 ft³",
    code: "mortar",
    wanted: "bed_mortar/0.6[ft³]",
    unit: "each",
    waste: 0.1,
  },
  {
    what: "foam under the lips, a can for each 4 ft",
    code: "foam",
    wanted: "SUM(falls.width)/4[ft]",
    unit: "each",
    waste: 0,
  },
  {
    what: "outlet with ground-fault protection",
    code: "gfci-outlet",
    wanted: 'IF(electrical_work="by us",1,0)',
    unit: "each",
    waste: 0,
  },
  { what: "lights", code: "lights", wanted: "lights_wanted", unit: "each", waste: 0 },
  {
    what: "cable to the lights",
    code: "light-cable",
    wanted: "lights_wanted*cable_a_light/1[ft]",
    unit: "ft",
    waste: 0.1,
  },
  {
    what: "transformer for the lights",
    code: "transformer",
    wanted: "IF(lights_wanted>0,1,0)",
    unit: "each",
    waste: 0,
  },
];
