import { type Block, calc, count, flow, head, lines, precise, table } from "../../../engine/template/index.js";
import { capacity } from "../capacity.js";
import { numberedRows, rowNumber } from "../numbered.js";
import { passesOf } from "./passes.js";
import type { State } from "./state.js";

/** What all outlets take together at a head. */
export const takenAt = (manifold: string, { prefix: of }: Pick<State, "prefix">): string =>
  `SUMPRODUCT(FLOW_ABOVE(${manifold},${of}_lines.stands,${of}_lines.pipe,${of}_lines.fittings))`;

const lossAt = (at: string) => `LOSS_AT(${at},main_friction,main_local)`;

/** The tables that solve one state of the network, and its results. */
export function networkBlocks(state: State): Block[] {
  const { prefix, title, speed, local } = state;
  // Rounded, so that what is found stays found: below that, programs differ in the last digits.
  const excess = (taken: string, at: string) =>
    `ROUND(LINE_HEAD(${taken},${prefix}_piece_start,${prefix}_piece_slope,${speed})-${lossAt(taken)}-${at},9)`;
  const branches = table(
    `${prefix}_lines`,
    `${title}: flow by line`,
    { ...numberedRows(capacity.lines, "row"), beside: "pipe_lines", filled: "bore>0" },
    {
      row: rowNumber("Line, row"),
      stands: calc(head, state.stands, "Height", {
        blank: "1000000[ft]",
        beyond: { from: 100000, says: "shut" },
      }),
      pipe: calc(precise, "friction", "Friction", { decimals: 7 }),
      fittings: calc(precise, local, "Fittings", {
        blank: "1",
        decimals: 7,
        beyond: { from: 1000000, says: "shut" },
      }),
      flow: calc(flow, `FLOW_AT_HEAD(${prefix}_manifold-stands,pipe,fittings)`, "Flow", {
        strong: true,
      }),
    },
  );
  const points = table(
    `${prefix}_points`,
    `${title}: curve points`,
    { ...numberedRows(capacity.curvePoints, "row"), beside: "pump_points" },
    {
      row: rowNumber("Point"),
      pumped: calc(flow, `flow*${speed}`, "Pumped"),
      remaining: calc(head, `MAX(0[ft],head*${speed}^2-${lossAt("pumped")})`, "Head left", {
        zero: "none",
      }),
      taken: calc(flow, takenAt("remaining", state), "Flow taken"),
      past: calc(precise, "IF(AND(used,taken>pumped),1,0)", "Taken over pumped", { decimals: 0 }),
    },
  );
  const line = lines(`${title}: curve segment`, {
    [`${prefix}_shut`]: calc(
      head,
      `CARRIED_BACK(INDEX(pump_points.flow,1),INDEX(pump_points.head,1),INDEX(pump_points.slope,1))*${speed}^2`,
      "Shutoff head",
    ),
    [`${prefix}_piece`]: calc(precise, `MAX(1,MIN(SUM(${prefix}_points.past),pump_point_count-1))`, "Curve segment", {
      decimals: 0,
    }),
    [`${prefix}_piece_slope`]: calc(precise, `INDEX(pump_points.slope,${prefix}_piece)`, "Segment slope"),
    [`${prefix}_piece_start`]: calc(
      head,
      `CARRIED_BACK(INDEX(pump_points.flow,${prefix}_piece),INDEX(pump_points.head,${prefix}_piece),${prefix}_piece_slope)`,
      "Segment head at zero flow",
    ),
  });
  const heights = table(
    `${prefix}_heights`,
    `${title}: outlet heights`,
    { rows: capacity.lines + 1, note: "The last row stands for all valves shut." },
    {
      at: calc(
        head,
        (row) => (row > capacity.lines ? `${prefix}_shut` : `MIN(INDEX(${prefix}_lines.stands,${row}),${prefix}_shut)`),
        "Manifold head",
      ),
      taken: calc(flow, takenAt("at", state), "Flow taken"),
      excess: calc(head, excess("taken", "at"), "Excess head", { decimals: 4 }),
      over: calc(count, "IF(excess>0,1,0)", "Excess"),
    },
  );
  return [branches, points, line, heights, ...passesOf(state, takenAt("at", state), excess("taken", "at"))];
}
