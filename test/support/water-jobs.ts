import type { InputValues } from "../../engine/job/record.js";
import type { BookRow } from "../../engine/template/book-layout.js";

/** A pump by points of gal/min, ft and (if known) watts. */
export function pump(
  code: string,
  points: readonly (readonly number[])[],
  rest: BookRow = {},
): BookRow {
  const columns = points.flatMap(([flow = 0, head = 0, watts], i) => [
    [`flow_${i + 1}`, flow * 60],
    [`head_${i + 1}`, head],
    ...(watts === undefined ? [] : [[`watts_${i + 1}`, watts]]),
  ]);
  return {
    code,
    description: `pump ${code}`,
    cost: 800,
    variable_speed: true,
    minimum_water: 6,
    ...Object.fromEntries(columns),
    ...rest,
  };
}

const curve = [
  [0, 28, 380],
  [30, 25, 425],
  [60, 20.5, 470],
  [90, 14, 510],
  [115, 6, 535],
] as const;

/** One curve twice: by variable speed at a higher price, and by fixed speed. */
export const yardPumps: readonly BookRow[] = [
  pump("V", curve, { cost: 900 }),
  pump("F", curve, { cost: 600, variable_speed: false }),
];

/** Two levels, three lips, two lines, a run and a pool. US units. */
export const yard: InputValues = {
  falls: [
    { name: "Top", level: 1, width: 3, drop: 2 },
    { name: "Left", level: 2, width: 2, drop: 1.5, look: "thin sheet" },
    { name: "Right", level: 2, width: 3, drop: 1.5 },
  ],
  runs: [{ name: "Bend", after_level: 1, length: 12 }],
  pools: [{ name: "Pool", before_level: 2, length: 6 }],
  pipe_lines: [
    { name: "Head", outlet_level: 1, pipe_size: "2 in", length: 25, siphon_stop: "air break" },
    { name: "Side", outlet_level: 2, pipe_size: "1-1/2 in", length: 10, end_below_water: 4 },
  ],
  pump_choice: "V",
};
