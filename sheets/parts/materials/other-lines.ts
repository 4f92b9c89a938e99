import { wireSizes } from "../../tables/wires.js";
import type { OwnLine } from "./pipe-lines.js";

/** What the pipes and the current need besides: figures by common practice, no source. */
export const otherLines: readonly OwnLine[] = [
  {
    what: "reducer bushings, main to branch",
    code: "reducer",
    wanted: "SUMPRODUCT((pipe_lines.bore>0)*(pipe_lines.pipe_size<>main_size))",
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
    what: "mortar of the beds, a bag for each ‹0.6 ft³|17 L›",
    code: "mortar",
    wanted: "bed_mortar/0.6[ft³]",
    unit: "each",
    waste: 0.1,
  },
  {
    what: "foam under the lips, a can for each ‹4 ft|1.22 m›",
    code: "foam",
    wanted: "SUM(falls.width)/4[ft]",
    unit: "each",
    waste: 0,
  },
  {
    what: "outlet with ground-fault protection",
    code: "gfci-outlet",
    wanted: "IF(electric_counted,1,0)",
    unit: "each",
    waste: 0,
  },
  {
    what: "breaker of the circuit",
    code: "breaker",
    wanted: "IF(electric_counted,1,0)",
    unit: "each",
    waste: 0,
  },
  {
    what: "conduit with its fittings",
    code: "conduit",
    wanted: "conduit_wanted",
    unit: "ft",
    waste: 0.1,
  },
  ...wireSizes.map(({ name }) => ({
    what: `wire ${name}, copper`,
    code: `wire-${name.replace(" AWG", "")}`,
    wanted: `IF(wire_size="${name}",wire_wanted,0)`,
    unit: "ft" as const,
    waste: 0.05,
  })),
  { what: "lights", code: "lights", wanted: "lights_wanted", unit: "each", waste: 0 },
  {
    what: "cable to the lights",
    code: "light-cable",
    wanted: "lights_wanted*cable_a_light",
    unit: "ft",
    waste: 0.1,
  },
  {
    what: "transformers for the lights",
    code: "transformer",
    wanted: "transformers_needed",
    unit: "each",
    waste: 0,
  },
];
