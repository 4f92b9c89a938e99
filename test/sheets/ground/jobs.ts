import type { InputValues, RowValues } from "../../../engine/job/record.js";
import { fromUs } from "../../../engine/units/quantity.js";
import { modelIn, stream } from "./bench.js";

const rows = (count: number, row: (i: number) => RowValues): RowValues[] =>
  Array.from({ length: count }, (_, i) => row(i + 1));

/** Every table of the ground with every row in use. */
const full: InputValues = {
  falls: rows(12, (i) => ({ name: `fall ${i}`, width: 1 + i / 4, drop: 0.5 + i / 8, throw: 0.5 })),
  runs: rows(12, (i) => ({
    ...{ name: `reach ${i}`, length: 4 + i, width: 2 + i / 6, bank_height: 1 },
  })),
  pools: rows(6, (i) => ({ name: `pool ${i}`, length: 4 + i, width: 3 + i, depth: 1, rise: 0.5 })),
  liner_rolls: rows(6, (i) => ({ width: 5 * i, roll_length: 100, whole_rolls: i % 2 === 0 })),
  stones: rows(8, (i) => ({
    ...{ name: `kind ${i}`, code: `stone-${i}`, rock: "basalt" },
    ...{ stone_length: i / 3, stone_width: 0.5, stone_height: 0.5 },
  })),
  stone_places: rows(16, (i) => ({
    ...{ name: `place ${i}`, stone: `kind ${(i % 8) + 1}`, covers: "own size", share: 1 },
    ...{ length: 10 * i, width: 2, thickness: 0.5, voids: 0.4 },
  })),
  berms: rows(4, (i) => ({
    ...{ name: `berm ${i}`, length: 10 * i, height: i, top: 3, slope: 2, end_slope: 4 },
  })),
  trees: rows(6, (i) => ({
    ...{ name: `tree ${i}`, trunk: 4 * i, distance: 3 * i, fill_planned: i / 4, wall_built: true },
  })),
  walls: rows(4, (i) => ({
    ...{ name: `wall ${i}`, length: 10, height: i, kind: i > 2 ? "block" : "stone" },
    ...{ loaded: false, arranged: true },
  })),
};

/** The same job, in metres, litres and kilograms. */
export function inSi(inputs: InputValues): InputValues {
  const model = modelIn("us");
  const convert = (name: string, value: unknown) => {
    const cell = model.cells.find((one) => one.name === name);
    if (cell === undefined || typeof value !== "number") return value;
    return value * fromUs(cell.declaration.quantity, "si");
  };
  return Object.fromEntries(
    Object.entries(inputs).map(([name, value]) => [
      name,
      Array.isArray(value)
        ? value.map((row: RowValues) =>
            Object.fromEntries(
              Object.entries(row).map(([key, one]) => [key, convert(`${name}.${key}`, one)]),
            ),
          )
        : convert(name, value),
    ]),
  ) as InputValues;
}

export const groundJobs: [string, InputValues][] = [
  ["two falls", stream],
  ["no falls and no reaches", {}],
  ["one fall", { falls: [{ name: "only", width: 2, drop: 1, throw: 0.3 }] }],
  ["every table full", full],
  [
    "a gap in the reaches",
    {
      runs: [
        { name: "", length: 0, width: 0, bank_height: 0 },
        { name: "", length: 9, width: 2, bank_height: 1 },
      ],
    },
  ],
];
