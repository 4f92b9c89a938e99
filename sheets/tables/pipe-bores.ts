import { bore, calc, precise, published, table, text } from "../../engine/template/index.js";

const dimensions = "ASTM D1785, Schedule 40: outside diameter and least wall, as reproduced";
const factor = "Crane Technical Paper 410, page A-26: friction factor in full turbulence";

/** Nominal size, outside diameter, least wall, average bore (in), Crane's fT. */
const rows: readonly [string, number, number, number, number][] = [
  ["1 in", 1.315, 0.133, 1.033, 0.023],
  ["1-1/4 in", 1.66, 0.14, 1.364, 0.022],
  ["1-1/2 in", 1.9, 0.145, 1.592, 0.021],
  ["2 in", 2.375, 0.154, 2.049, 0.019],
  ["2-1/2 in", 2.875, 0.203, 2.445, 0.018],
  ["3 in", 3.5, 0.216, 3.042, 0.018],
  ["4 in", 4.5, 0.237, 3.998, 0.017],
  ["6 in", 6.625, 0.28, 6.031, 0.015],
];

/** Bores of the pipe sizes that a yard stocks, by each convention in use. */
export const pipeSizes = table(
  "pipe_sizes",
  "Plastic pipe, Schedule 40",
  {
    rows: rows.length,
    data: rows.map(([size, outside, wall, bore_average, turbulent_factor]) => ({
      size,
      outside,
      wall,
      bore_average,
      turbulent_factor,
    })),
    note: "The bore used follows the choice on sheet Office rules. Head lost differs by up to 6 % between the three.",
  },
  {
    size: published(text, "Nominal size", { source: dimensions }),
    outside: published(bore, "Outside diameter", { source: dimensions }),
    wall: published(bore, "Least wall", { source: dimensions }),
    bore_average: published(bore, "Average inside diameter", {
      source: "general channel-flow pipe data, Schedule 40 plastic",
    }),
    bore_least_wall: calc(bore, "BORE(outside,wall)", "Outside less two least walls"),
    bore_usual_wall: calc(bore, "THICK_WALL_BORE(outside,wall)", "Outside less two 1.03 walls"),
    bore: calc(
      bore,
      'IF(bore_basis="average inside diameter",bore_average,IF(bore_basis="wall 3 % over the least",bore_usual_wall,bore_least_wall))',
      "Bore used",
      { strong: true },
    ),
    turbulent_factor: published(precise, "Friction factor fT", { source: factor, decimals: 3 }),
  },
);
