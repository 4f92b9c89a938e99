import type { InputValues } from "../../../engine/job/record.js";
import { smallYard } from "./small-yard.js";

/** Hours as they fall and cents as they come, and no toilet: no effect hides in a whole day, a rent or a step of the price. */
export const exact: InputValues = { pay_whole_days: false, rounding_step: 0.01, toilet_from: 100 };
export const machine: InputValues = { gate_width: 10, access_steps: 0 };

export type Row = Readonly<Record<string, unknown>>;
export const rows = (table: string, change: (row: Row) => Row): InputValues =>
  ({ [table]: (smallYard[table] as unknown as readonly Row[]).map(change) }) as InputValues;

/** The stone lips by their width and drop; the pot stays as it is. Pump and pipe stay too. */
export const lips = (wide: number, high: number): InputValues =>
  rows("falls", (row) =>
    row.lip_type === "pot rim"
      ? row
      : { ...row, width: Number(row.width) * wide, drop: Number(row.drop) * high },
  );
const longer = rows("runs", (row) => ({ ...row, length: Number(row.length) * 2 }));

/** What changes, from what to what, by how much of the price at least and at most (by hand, with a machine), and why. */
export const effects: [
  string,
  InputValues,
  InputValues,
  [number, number],
  [number, number],
  string,
][] = [
  [
    "lip width x 2",
    {},
    lips(2, 1),
    [0.05, 0.2],
    [0.03, 0.15],
    "lips, face, back wall and foam go by the width; set-up, basin and dig do not",
  ],
  [
    "drop x 2",
    {},
    lips(1, 2),
    [0.05, 0.2],
    [0.03, 0.15],
    "face, back wall, shoulders and liner go by the drop; lips do not",
  ],
  [
    "stream length x 2",
    {},
    longer,
    [0.08, 0.3],
    [0.04, 0.25],
    "bed, banks, liner and channel go by the length; falls, basin, pump and pipe do not",
  ],
  [
    "distance x 2",
    { site_haul: 80 },
    { site_haul: 160 },
    [0.01, 0.1],
    [0.002, 0.04],
    "the way slows what is carried and wheeled, not what is built; a machine minds it less than a barrow",
  ],
  [
    "soil soft to hard",
    { site_soil: "soft" },
    { site_soil: "hard" },
    [0.03, 0.15],
    [0.005, 0.09],
    "digs and trenches take over twice the time by hand, half as much again by machine, with which a fifth day of hire and site begins",
  ],
];
