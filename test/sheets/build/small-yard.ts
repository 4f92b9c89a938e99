import { valuesOf } from "../../../engine/book/values.js";
import { calculateFast } from "../../../engine/evaluate/calculate.js";
import type { Value } from "../../../engine/formula/value.js";
import type { InputValues, JobRecord } from "../../../engine/job/record.js";
import { book, model } from "../../support/changed-demo.js";

const stone = (
  name: string,
  code: string,
  sizes: readonly [number, number, number],
  fullness = 0.7,
) => ({
  ...{ name, code, rock: "field stone", fullness },
  ...{ stone_length: sizes[0], stone_width: sizes[1], stone_height: sizes[2] },
});

/**
 * An invented back yard behind a gate of 4 ft and three steps, in clay: a pot on top, a fall, and a second
 * fall split over two lips. Three people do it by hand, so the stone is chosen small.
 */
export const smallYard: InputValues = {
  ...{
    customer: "Invented customer",
    site: "7 Made-up Court (invented)",
    estimator: "Invented estimator",
  },
  bid_date: "2026-11-02",
  start_month: 5,
  // the way in, and who goes it
  ...{ gate_width: 4, access_steps: 3, access_slope: 0.04, site_haul: 80, soil_kind: "clay" },
  ...{ crew_size: 3, travel_time: 0.5, daily_set_up: 0.5 },
  falls: [
    { name: "Pot", level: 1, width: 1.5, drop: 2, look: "rim film", lip_type: "pot rim" },
    { name: "Upper fall", level: 2, width: 2, drop: 1.5 },
    { name: "Split, left", level: 3, width: 1.5, drop: 1 },
    { name: "Split, right", level: 3, width: 1, drop: 1 },
  ],
  pots: [{ name: "Glazed pot", level: 1, across: 1.5, water_depth: 20, empty: 140 }],
  runs: [
    {
      name: "Upper run",
      after_level: 2,
      length: 6,
      width: 2,
      fall: 0.25,
      bed: "cobble",
      bank_height: 0.75,
    },
    {
      name: "Lower run",
      after_level: 3,
      length: 8,
      width: 2.5,
      fall: 0.25,
      bed: "gravel",
      bank_height: 0.75,
    },
  ],
  pipe_lines: [
    {
      name: "Pot",
      outlet_level: 1,
      pipe_size: "1-1/4 in",
      length: 20,
      elbows_90: 2,
      siphon_stop: "check valve",
    },
    {
      ...{ name: "Upper fall", outlet_level: 2, pipe_size: "2 in", length: 14, elbows_90: 2 },
      ...{ siphon_stop: "end above water", above_water: 0.2 },
    },
  ],
  ...{ main_size: "2 in", main_length: 20, main_elbows_90: 2, pump_choice: "P-40" },
  ...{ basin_length: 7, basin_width: 5, basin_depth: 3, rim_above_water: 14 },
  ...{ electrical_work: "by the customer", panel_distance: 40, fill_line_length: 0 },
  stones: [
    stone("lip stones", "stone-lip", [2, 1.5, 0.33], 0.9),
    stone("boulders", "stone-boulder", [1.5, 1.25, 1]),
    stone("fall stones", "stone-boulder", [1.5, 1, 0.75]),
    stone("bed boulders", "stone-boulder", [1.5, 1, 1]),
    stone("cobble", "stone-cobble", [0.7, 0.5, 0.4]),
    stone("gravel", "gravel-washed", [0.1, 0.1, 0.1]),
    stone("basin stone", "stone-basin", [0.2, 0.2, 0.2]),
  ],
};

/** The yard with some of its inputs changed, priced from the demo's office book. */
export function yard(changed: InputValues = {}) {
  const job: JobRecord = {
    ...{ rillbook: 1, job: "small yard", template: "waterfall", version: 1, units: "us" },
    inputs: { ...smallYard, ...changed },
  };
  const values = calculateFast(model, valuesOf(model, job, book));
  const value = (id: string): Value => {
    const cell = model.byId.get(id);
    if (cell === undefined) throw new Error(`No cell ${id}`);
    return values[cell.index] ?? null;
  };
  const figure = (id: string): number => {
    const found = value(id);
    if (typeof found !== "number") throw new Error(`${id} is ${String(found)}`);
    return found;
  };
  const column = (name: string) =>
    model.cells.filter((cell) => cell.name === name).map(({ index }) => values[index] ?? null);
  /** The cell of a column in the row that the first column heads so. */
  const at = (table: string, head: string, row: string, key: string): number =>
    figure(`${table}.${key}[${column(`${table}.${head}`).indexOf(row) + 1}]`);
  return { value, figure, column, at };
}
