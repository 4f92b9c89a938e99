import { type Block, calc, check, flow, head, lines, precise, table } from "../../../engine/template/index.js";
import type { State } from "./state.js";

/** Passes that close in on the head at the manifold. Ten leave less than 0.00001 gal/min on any network tried. */
const rows = 10;

/** The passes and the results of one state of the network. */
export function passesOf({ prefix, title }: State, taken: string, excess: string): Block[] {
  const heights = `${prefix}_heights`;
  const before = (kept: string, moved: string) => `IF(above.excess>0,${moved},${kept})`;
  const passes = table(
    `${prefix}_passes`,
    `${title}: manifold head search`,
    {
      rows,
      note: "False position, Illinois rule: a straight line between a head with excess and one without gives the next trial; an end that stays twice counts for half.",
    },
    {
      low: calc(head, before("above.low", "above.at"), "Too low", {
        first: `IF(LISTED(${heights}.over,1),LARGEST_WHERE(${heights}.at,${heights}.over,1),${prefix}_shut)`,
      }),
      high: calc(head, before("above.at", "above.high"), "Too high", {
        first: `IF(LISTED(${heights}.over,0),LEAST_WHERE(${heights}.at,${heights}.over,0),${prefix}_shut)`,
      }),
      halve: calc(precise, "IF(above.excess*above.excess_before>0,0.5,1)", "Weight of kept end", {
        first: "1",
        decimals: 1,
      }),
      low_excess: calc(head, before("above.low_excess*halve", "above.excess"), "Excess, low", {
        first: `LEAST_WHERE(${heights}.excess,${heights}.over,1)`,
        decimals: 4,
      }),
      high_excess: calc(head, before("above.excess", "above.high_excess*halve"), "Excess, high", {
        first: `LARGEST_WHERE(${heights}.excess,${heights}.over,0)`,
        decimals: 4,
      }),
      at: calc(
        head,
        "IF(low_excess=high_excess,high,MAX(low,MIN(high,high-high_excess*(high-low)/(high_excess-low_excess))))",
        "Trial head",
        { decimals: 4 },
      ),
      taken: calc(flow, taken, "Flow taken", { decimals: 4 }),
      excess: calc(head, excess, "Excess head", { decimals: 6 }),
      excess_before: calc(head, "above.excess", "Excess before", { first: "0", decimals: 6 }),
    },
  );
  const total = prefix === "actual" ? "total_flow" : "open_total";
  const results = lines(`${title}: results`, {
    [`${prefix}_manifold`]: calc(head, `INDEX(${prefix}_passes.at,${rows})`, "Manifold head", {
      strong: true,
    }),
    [total]: calc(flow, `SUM(${prefix}_lines.flow)`, prefix === "actual" ? "Total flow" : "Total flow, valves open", {
      strong: true,
    }),
    [`${prefix}_pump_head`]: calc(head, `${prefix}_manifold+LOSS_AT(${total},main_friction,main_local)`, "Pump head"),
    [`${prefix}_converged`]: check(
      `ABS(INDEX(${prefix}_passes.excess,${rows}))<0.001[ft]`,
      `The balance did not converge: {${prefix}_manifold|3} of manifold head leaves more than ‹0.001 ft|0.3 mm› of excess. Check the pump curve on sheet Pumps.`,
      { label: "Balance not converged" },
    ),
  });
  return [passes, results];
}
