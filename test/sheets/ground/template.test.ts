import { describe, expect, test } from "vitest";
import type { InputValues, RowValues } from "../../../engine/job/record.js";
import { fromUs } from "../../../engine/units/quantity.js";
import { errorsIn, modelIn, stream, work } from "./bench.js";

const rows = (count: number, row: (i: number) => RowValues): RowValues[] =>
  Array.from({ length: count }, (_, i) => row(i + 1));

const full: InputValues = {
  falls: rows(12, (i) => ({ name: `fall ${i}`, width: 1 + i / 4, drop: 0.5 + i / 8, leap: 0.5 })),
  reaches: rows(12, (i) => ({
    ...{ name: `reach ${i}`, length: 4 + i, width: 2 + i / 6, bank_height: 1 },
  })),
  liner_rolls: rows(6, (i) => ({ width: 5 * i, roll_length: 100, whole_rolls: i % 2 === 0 })),
  stones: rows(6, (i) => ({
    ...{ name: `class ${i}`, code: `stone-${i}`, covers: "own size", share: 1, rock: "basalt" },
    ...{ length: 10 * i, width: 2, thickness: 0.5, voids: 0.4 },
    ...{ stone_length: i / 3, stone_width: 0.5, stone_height: 0.5 },
  })),
  machine_chart: rows(5, (i) => ({ reach: 6 + 2 * i, lift: 3000 - 400 * i })),
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
function inSi(inputs: InputValues): InputValues {
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

const jobs: [string, InputValues][] = [
  ["two falls", stream],
  ["no falls and no reaches", {}],
  ["one fall", { falls: [{ name: "only", width: 2, drop: 1, leap: 0.3 }] }],
  ["every table full", full],
  [
    "a gap in the reaches",
    {
      reaches: [
        { name: "", length: 0, width: 0, bank_height: 0 },
        { name: "", length: 9, width: 2, bank_height: 1 },
      ],
    },
  ],
];

describe.each(jobs)("a job with %s", (_, inputs) => {
  test("has no error in any cell, by both evaluators", () => {
    expect(errorsIn(work(inputs, { judged: true }))).toEqual([]);
  });

  test("is the same in SI units, but for the unit", () => {
    const us = work(inputs);
    const si = work(inSi(inputs), { units: "si", judged: true });
    const differ = us.model.cells.filter((cell) => {
      const [a, b] = [us.value(cell.id), si.value(cell.id)];
      const { kind } = cell.declaration.quantity;
      if (kind === "text") return false;
      if (typeof a !== "number" || typeof b !== "number") return a !== b;
      const wanted = a * fromUs(cell.declaration.quantity, "si");
      return Math.abs(b - wanted) > 1e-8 * Math.max(1, Math.abs(wanted));
    });
    expect(differ.map(({ id }) => `${id} ${us.value(id)} ${si.value(id)}`)).toEqual([]);
  });
});

test("rows that are not in use hold nothing", () => {
  const { model, value } = work(stream);
  for (const cell of model.cells) {
    const inPieces = cell.table === "liner_pieces" && [5, 13, 20].includes(cell.row ?? 0);
    if (!inPieces || cell.declaration.kind === "published") continue;
    expect([0, "", false], cell.id).toContain(value(cell.id));
  }
});

test("what is bought goes by code, in the units of the price book", () => {
  const { model, value, number } = work(stream);
  const lines = ["basin_buys", "liner_buys", "stone_buys", "ground_buys"].flatMap((table) =>
    Array.from({ length: model.tables.get(table)?.block.rows ?? 0 }, (_, i) => {
      const at = (column: string) => value(`${table}.${column}[${i + 1}]`);
      return [at("code"), at("unit"), at("wanted")];
    }),
  );
  expect(lines).toContainEqual(["crate", "each", number("crates_needed")]);
  expect(lines).toContainEqual(["liner-45mil", "ft2", number("liner_area_bought")]);
  expect(lines).toContainEqual(["stone-lip", "ton", number("stones.tons[1]")]);
  expect(lines).toContainEqual(["gravel-base", "yd3", number("wall_base")]);
  // the same numbers where the job is in SI
  const si = work(inSi(stream), { units: "si" });
  expect(si.number("liner_buys.wanted[1]")).toBeCloseTo(number("liner_buys.wanted[1]"), 6);
});
