import { area, count, formula, length, number, weight } from "../../engine/template/index.js";

const geometry = "geometry: n strips cover n widths less n - 1 laps";

const STRIPS = formula(
  "STRIPS",
  "How many strips of a roll, lapped at the seams, cover a size",
  { size: length, roll: length, lap: length },
  count,
  "MAX(1, ROUNDUP(ROUND((size - lap) / (roll - lap), 6), 0))",
  geometry,
);

const SEAM_OF = formula(
  "SEAM_OF",
  "Length of the seams of a piece",
  { across: length, along: length, strips: count, parts: count },
  length,
  "(strips - 1) * along + (parts - 1) * across",
  geometry,
);

const PIECE_COST = formula(
  "PIECE_COST",
  "Liner that a piece takes from a roll, with its seams counted as liner",
  {
    across: length,
    along: length,
    roll: length,
    roll_length: length,
    lap: length,
    worth: length,
  },
  area,
  "STRIPS(across, roll, lap) * (along + (STRIPS(along, roll_length, lap) - 1) * lap) * roll" +
    " + worth * SEAM_OF(across, along, STRIPS(across, roll, lap), STRIPS(along, roll_length, lap))",
  geometry,
);

const LIFT_LIMIT = formula(
  "LIFT_LIMIT",
  "Weight that most healthy workers may lift in the posture given",
  {
    load_constant: weight,
    reach: "in",
    height: "in",
    travel: "in",
    twist: "°",
    frequency: number,
    coupling: number,
  },
  weight,
  "load_constant * 10 / MAX(10, reach) * (1 - 0.0075 * ABS(height - 30))" +
    " * MIN(1, 0.82 + 1.8 / MAX(10, travel)) * (1 - 0.0032 * twist) * frequency * coupling",
  "NIOSH Publication 94-110, revised lifting equation (twist from memory)",
);

export const linerFormulas = [STRIPS, SEAM_OF, PIECE_COST, LIFT_LIMIT] as const;
