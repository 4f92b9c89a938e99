import { readFileSync } from "node:fs";
import { join } from "node:path";
import fc from "fast-check";
import { describe, expect, it, test } from "vitest";
import { shownBy } from "../../../engine/audit/look/format/shown.js";
import { valuesOf } from "../../../engine/book/values.js";
import { calculateFast } from "../../../engine/evaluate/calculate.js";
import { CellError, type Value } from "../../../engine/formula/value.js";
import type { JobRecord } from "../../../engine/job/record.js";
import type { Cell } from "../../../engine/template/model.js";
import { numberFormat } from "../../../engine/workbook/write/number-format.js";
import { book, type Changes, changedDemo, model } from "../../support/changed-demo.js";
import { demoFolder } from "../../support/demo.js";

const garden: JobRecord = JSON.parse(readFileSync(join(demoFolder, "garden-corner.json"), "utf8"));
const job = (inputs: Changes): readonly Value[] =>
  calculateFast(model, [
    ...valuesOf(model, { ...garden, inputs: { ...garden.inputs, ...inputs } } as JobRecord, book),
  ]);
const at = (values: readonly Value[], id: string) => values[model.byId.get(id)?.index as number];
const num = (values: readonly Value[], id: string) => at(values, id) as number;

const taskNames =
  model.tables
    .get("tasks")
    ?.columns.get("task")
    ?.cells.map(({ fixed }) => fixed) ?? [];
const rowOf = (task: string) => taskNames.indexOf(task) + 1;
/** Rows of `built_tasks` with what is told of some tasks. */
const told = (tasks: Readonly<Record<string, Changes>>) => ({
  built_tasks: taskNames.map((name) => tasks[String(name)] ?? null),
});
const liner = "Lay liner and underlayment";
const main = "Lay the main";

const yard = "Demo stone yard";
const planOf = num(job({ built_invoices: [{ supplier: yard }] }), "built_invoices.planned[1]");

// On paper, for the garden corner. Liner: 300 ft² planned at 55 an hour are 300/55 = 5.4545 h. 330 ft² were laid in
// 9 h: by quantity 30/55 = 0.5455 h, by rate 9 - 330/55 = 3 h, together 3.5455 h.
// Main: 10 ft planned at 22 an hour are 0.4545 h; 2 h were told and no length: 1.5455 h are not split.
// Labor: $3,771.18 over 90.6206 h are $41.6150 an hour; at $45 paid, price makes (45 - 41.615) × 11 h = $37.23.
describe("the garden corner on paper", () => {
  const values = job({
    ...told({ [liner]: { quantity_done: 330, hours_taken: 9 }, [main]: { hours_taken: 2 } }),
    job_state: "built",
    labor_rate_paid: 45,
    price_charged: 15500,
    built_invoices: [{ supplier: "Demo stone yard", invoiced: 1000 }],
  });
  const close = (id: string, wanted: number, digits = 4) =>
    expect([id, num(values, id)]).toEqual([id, expect.closeTo(wanted, digits)]);

  it("says in words what was told of a task", () => {
    const said = (task: string) =>
      values[model.byId.get(`built_tasks.told[${rowOf(task)}]`)?.index ?? -1];
    expect([liner, main, "Place boulders"].map(said)).toEqual(["both", "hours", ""]);
  });

  it("shows a word where sums count one told and none", () => {
    const told = [
      "built_hires.told",
      "built_subcontracts.told",
      "built_lines.told",
      "built_additional.told",
    ];
    for (const name of told) {
      const { declaration } = model.cells.find((cell) => cell.name === name) as Cell;
      const format = numberFormat(declaration, "us");
      expect(
        [0, 1].map((value) => shownBy(format, value)),
        name,
      ).toEqual(["no", "yes"]);
    }
  });

  it("splits hours by quantity and rate", () => {
    const row = rowOf(liner);
    close(`tasks.quantity[${row}]`, 300);
    close(`task_effects.rate_planned[${row}]`, 55);
    close(`task_effects.more[${row}]`, 9 - 300 / 55);
    close(`task_effects.by_quantity[${row}]`, 30 / 55);
    close(`task_effects.by_rate[${row}]`, 3);
    close("hours_not_split", 2 - 10 / 22);
    close("tasks_more", 11 - 310 / 55 - (10 / 22 - 10 / 55));
  });

  it("splits money by quantity, rate and price", () => {
    const hour = 3771.18 / num(values, "man_hours");
    expect(hour).toBeCloseTo(41.615, 3);
    close("cost_effects.by_quantity[1]", (30 / 55) * hour, 2);
    close("cost_effects.by_rate[1]", 3 * hour, 2);
    close("cost_effects.by_price[1]", (45 - hour) * 11, 2);
    close("cost_effects.not_split[1]", (2 - 10 / 22) * hour, 2);
    const planned = num(values, "built_invoices.planned[1]");
    close("cost_effects.more[2]", 1000 - planned, 6);
    close("margin_made", 1 - num(values, "cost_made") / 15500, 12);
    // what is not told counts as planned: overhead and all other cost, without the contingency
    const expected = num(values, "total_cost") - num(values, "contingency_cost");
    close("cost_made", expected + num(values, "cost_more"), 6);
  });

  it("says so in words", () => {
    expect(at(values, "back_first")).toBe(
      "Lay liner and underlayment: 3.5 h more than planned (0.5 by quantity, 3.0 by rate).",
    );
    expect(at(values, "back_second")).toBe(
      "Lay the main: 1.5 h more than planned (its quantity is not told).",
    );
    expect(at(values, "back_third")).toBe("");
    expect(at(values, "effects_add_up")).toBe(true);
    expect(at(values, "costs_add_up")).toBe(true);
  });
});

/** What the page shows of the differences, as people read it, by cell; the rest of the sheet is not printed. */
const differences =
  /^(cost_effects|cost_total|task_effects|line_readings|run_readings)\.(?!made|planned|told)|^(tasks_|others_hours_more|cost_more|metered_off|power_off)/;
const shownDifferences = (values: readonly Value[]): readonly (readonly [string, string])[] =>
  model.cells
    .filter(({ sheet, id }) => sheet === "Look back" && differences.test(id))
    .map(({ id, index, declaration }) => {
      const value = values[index];
      return [id, typeof value === "number" ? shownBy(numberFormat(declaration, "us"), value) : ""];
    });
const signedZero = /^-[$]?0+([.]0+)?%?$/;

test("a difference too small to be read is none, without a sign, and sums hold it in full", () => {
  const planned = num(job({}), `built_tasks.hours_planned[${rowOf(main)}]`);
  const values = job({
    ...told({ [main]: { hours_taken: planned - 0.03, quantity_done: 10.0005 } }),
    job_state: "built",
    built_invoices: [{ supplier: yard, invoiced: planOf - 0.3 }],
  });
  const shown = new Map(shownDifferences(values));
  expect(shown.get("tasks_more")).toBe("0.0");
  expect(shown.get("tasks_by_rate")).toBe("0.0");
  expect(shown.get("cost_effects.more[2]")).toBe("$0");
  expect(shown.get("cost_effects.by_price[2]")).toBe("–");
  expect(at(values, "back_hours")).toMatch(
    /^Tasks told: as planned: 0\.0 by quantity, 0\.0 by rate/,
  );
  // the hour's cost of 0.03 h and the 30 cents are 1.55: more than half a dollar, though neither is shown alone
  expect(num(values, "direct_made") - num(values, "direct_planned")).toBeCloseTo(
    -0.03 * num(values, "labor_rate_planned") - 0.3,
    6,
  );
  expect(shown.get("cost_more")).toBe("-$2");
  expect([at(values, "effects_add_up"), at(values, "costs_add_up")]).toEqual([true, true]);
  expect([...shown].filter(([, said]) => signedZero.test(said))).toEqual([]);
});

test("whatever is told, the effects add up to the differences, and none is shown as a signed zero", () => {
  const amount = fc.option(fc.double({ min: 0, max: 4000, noNaN: true }), { nil: null });
  const rows = fc.array(fc.record({ quantity_done: amount, hours_taken: amount }), {
    maxLength: 42,
  });
  const rate = fc.option(fc.double({ min: 1, max: 900, noNaN: true }), { nil: null });
  fc.assert(
    fc.property(rows, rate, (built_tasks, labor_rate_paid) => {
      const values = job({ built_tasks, labor_rate_paid });
      expect([at(values, "effects_add_up"), at(values, "costs_add_up")]).toEqual([true, true]);
      expect(shownDifferences(values).filter(([, said]) => signedZero.test(said))).toEqual([]);
    }),
    { numRuns: 12 },
  );
});

describe("what a supplier's rows count", () => {
  it.each([
    ["one invoice", [{ supplier: yard, invoiced: 1000 }], 1000, planOf],
    [
      "two of one supplier",
      [500, 400].map((invoiced) => ({ supplier: yard, invoiced })),
      900,
      planOf,
    ],
    [
      "a first row without a sum",
      [{ supplier: yard }, { supplier: yard, invoiced: 1000 }],
      1000,
      planOf,
    ],
    ["none, invoiced as zero", [{ supplier: yard, invoiced: 0 }], 0, planOf],
    ["none told", [{ supplier: yard }], 0, 0],
    ["a sum without a supplier", [{ invoiced: 70 }], 70, 0],
  ] as const)("%s", (_, built_invoices, invoiced, planned) => {
    const values = job({ built_invoices: built_invoices as unknown as Changes[] });
    expect(planOf).toBeGreaterThan(0);
    expect(num(values, "cost_effects.more[2]")).toBeCloseTo(invoiced - planned, 9);
    expect(num(values, "invoices_planned")).toBe(planned);
    expect(num(values, "built_invoices_told")).toBe(
      built_invoices.filter((row) => "invoiced" in row).length,
    );
    expect(at(values, "costs_add_up")).toBe(true);
  });
});

test("nothing told: no row, no error, nothing claimed; and nothing told moves the bid", () => {
  const [none, all] = [
    job({}),
    job({
      ...told({ [liner]: { quantity_done: 1, hours_taken: 4000 } }),
      job_state: "built",
      price_charged: 1,
    }),
  ];
  const after = new Set(["Built", "Look back"]);
  const own = model.cells.filter(({ sheet }) => after.has(sheet));
  expect(own.filter(({ index }) => none[index] instanceof CellError).map(({ id }) => id)).toEqual(
    [],
  );
  expect(num(none, "built_given")).toBe(0);
  expect(num(none, "tasks_more")).toBe(0);
  expect(num(none, "cost_more")).toBe(0);
  const moved = model.cells
    .filter(({ sheet }) => !after.has(sheet) && sheet !== "Checks")
    .filter(({ index }) => none[index] !== all[index]);
  expect(moved.map(({ id }) => id)).toEqual([]);
  for (const id of ["bid_stands", "checks_failed", "errors_found"]) {
    expect([id, at(all, id)]).toEqual([id, at(none, id)]);
  }
});

describe("water, metered", () => {
  const long = { main_length: 250 };
  const planned = changedDemo(long);
  const lines = [1, 2, 3].map((row) => num(planned, `pipe_lines.actual_flow[${row}]`));
  const metered = (share: number) =>
    changedDemo({ ...long, built_lines: lines.map((flow) => ({ flow_metered: flow * share })) });

  it("gives the C of the plan where the balance is what was metered, and a rougher one for less", () => {
    expect(num(metered(1), "smoothness_metered")).toBeCloseTo(num(planned, "smoothness"), 3);
    expect(num(metered(0.97), "smoothness_metered")).toBeLessThan(num(planned, "smoothness") - 3);
    expect(at(metered(0.97), "smoothness_said")).toMatch(/^C of \d+ would give the metered flow/);
  });

  it("says where C cannot be told", () => {
    expect(at(planned, "smoothness_said")).toMatch(/once every running line is metered/);
    const short = changedDemo({ built_lines: lines.map((flow) => ({ flow_metered: flow })) });
    expect(num(short, "smoothness_metered")).toBe(0);
  });

  it("counts a flow of zero as metered, and a blank as not", () => {
    const values = changedDemo({ built_lines: [{ flow_metered: 0 }, { flow_metered: lines[1] }] });
    expect(num(values, "built_meters_told")).toBe(2);
    expect(num(values, "line_readings.off[1]")).toBe(-1);
    expect(at(values, "line_readings.means[1]")).toMatch(/^Less than balanced/);
    expect(at(values, "line_readings.means[3]")).toBe("");
    expect(num(values, "lines_unmetered")).toBe(1);
  });

  it("gives the flow of the balance at the depth that the law gives it", () => {
    const depth = num(planned, "runs.depth_likely[1]");
    const values = changedDemo({ ...long, built_runs: [{ depth_metered: depth }] });
    const flow = num(values, "runs.flow[1]");
    expect(num(values, "run_readings.law_flow[1]") / flow).toBeCloseTo(1, 4);
    expect(num(values, "run_readings.off[1]")).toBeCloseTo(0, 9);
  });
});
