import { angle, number, published, table, text } from "../../engine/template/index.js";

const published5 = "plug cock by Weisbach, as listed in Perry's Chemical Engineers' Handbook (5, 10, 20, 40, 60°)";
const recalled = "plug cock by Weisbach (from memory)";
const carried = "no source: 486 at 65° carried on as (82° - angle)^-3.3, the trend from 50° on";
const shut = "a cock after Weisbach is shut near 82° (from memory)";

const rows: readonly [number, number, string][] = [
  [0, 0, "open: the valve's own K is counted with the fittings"],
  [5, 0.05, published5],
  [10, 0.29, published5],
  [15, 0.75, recalled],
  [20, 1.56, published5],
  [25, 3.1, recalled],
  [30, 5.47, recalled],
  [35, 9.68, recalled],
  [40, 17.3, published5],
  [45, 31.2, recalled],
  [50, 52.6, recalled],
  [55, 106, recalled],
  [60, 206, published5],
  [65, 486, recalled],
  [70, 1530, carried],
  [75, 9080, carried],
  [80, 567000, carried],
  [82, 1e12, shut],
  [90, 1e12, "closed"],
];

/** Loss that a ball valve adds as it is turned from open. */
export const valveOpening = table(
  "valve_opening",
  "Ball valve, loss by setting",
  {
    rows: rows.length,
    data: rows.map(([turned, added, source]) => ({ turned, added, source })),
    note: "Between rows the logarithm of K runs straight, since K spans four decades; below 5° K itself does.",
  },
  {
    turned: published(angle, "Turned from open", { source: published5 }),
    added: published(number, "Loss added, K", { source: published5 }),
    source: published(text, "Source", { source: published5 }),
  },
);
