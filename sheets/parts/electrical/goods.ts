import { wireSizes } from "../../tables/wires.js";
import type { UsualLine } from "../goods.js";

/** What the circuit needs, where it is counted item by item: common practice, no source. */
export const circuitGoods: readonly UsualLine[] = [
  {
    what: "outlet with ground-fault protection",
    code: "gfci-outlet",
    wanted: "IF(electric_counted,1,0)",
    unit: "each",
    placeholder: 100,
  },
  {
    what: "breaker of the circuit",
    code: "breaker",
    wanted: "IF(electric_counted,1,0)",
    unit: "each",
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
];
