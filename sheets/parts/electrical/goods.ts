import { calc, lines, text } from "../../../engine/template/index.js";
import { wireSizes } from "../../tables/wires.js";
import type { UsualLine } from "../goods.js";

/** What the circuit needs, where it is counted item by item: common practice, no source. */
export const circuitGoods: readonly UsualLine[] = [
  {
    what: "outlet with ground-fault protection",
    code: "gfci-outlet",
    wanted: "IF(electric_counted,1,0)",
    unit: "each",
    said: "breaker_said",
    placeholder: 100,
  },
  {
    what: "breaker of the circuit",
    code: "breaker",
    wanted: "IF(electric_counted,1,0)",
    unit: "each",
    said: "breaker_said",
  },
  {
    what: "conduit with its fittings",
    code: "conduit",
    wanted: "conduit_wanted",
    unit: "ft",
    waste: 0.1,
    said: "conduit_said",
  },
  ...wireSizes.map(({ name }) => ({
    what: `wire ${name}, copper`,
    code: `wire-${name.replace(" AWG", "")}`,
    wanted: `IF(wire_size="${name}",wire_wanted,0)`,
    unit: "ft" as const,
    waste: 0.05,
    said: '"for two conductors and ground"',
  })),
];

/** What the counter asks for: common practice, no source. */
export const circuitSaid = lines("Wording of the circuit", {
  breaker_said: calc(text, "~{breaker_rating|0}, {supply_voltage|0}", "Breaker, as ordered"),
  conduit_said: calc(text, '"for three conductors of "&wire_size', "Conduit, as ordered"),
});
