import { readdirSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it, test } from "vitest";
import { loadJob } from "../../engine/book/load-job.js";
import { calculateFast } from "../../engine/evaluate/calculate.js";
import { CellError } from "../../engine/formula/value.js";
import { verifyTrail } from "../../engine/job/trail/verify.js";
import { columnOf } from "../../engine/template/model.js";
import { decimalsIn } from "../../engine/units/decimals.js";
import { templates } from "../../sheets/templates/index.js";
import { demoFolder } from "../support/demo.js";

const folder = join(demoFolder, "built");
const names = readdirSync(folder).filter((name) => name.endsWith(".json"));

async function solved(name: string) {
  const { model, given, job } = await loadJob(join(folder, name), templates);
  const values = calculateFast(model, given);
  const of = (id: string) => values[model.byId.get(id)?.index as number];
  return { model, values, job, of };
}

test("six jobs that are built or lost, all invented", () => {
  expect(names).toHaveLength(6);
});

describe.each(names)("%s", (name) => {
  it("stands, holds no error, says that it is invented, and its trail says who told it", async () => {
    const { model, values, job, of } = await solved(name);
    const errors = model.cells.filter(({ index }) => values[index] instanceof CellError);
    expect(errors.map(({ id }) => id)).toEqual([]);
    expect(of("bid_stands")).toBe(true);
    expect(job.about).toMatch(/^Invented for showing/);
    expect(verifyTrail(job.trail ?? [])).toEqual([]);
    expect(job.trail?.map(({ input, from }) => [input, from])).toEqual([
      ["job_state", "told after the work"],
    ]);
    expect([of("effects_add_up"), of("costs_add_up"), of("state_fits_hours")]).toEqual([
      ...[true, true, true],
    ]);
  });

  it("is read by the role alone, without a word of the trade", async () => {
    const { model, values, of } = await solved(name);
    const built = model.template.roles?.built;
    if (built === undefined) throw new Error("no role");
    const state = of(built.state);
    expect([built.states.built, built.states.lost]).toContain(state);
    const column = (named: string) => {
      const [table = "", key = ""] = named.split(".");
      return columnOf(model, table, key).cells.map(({ index, fixed }) => fixed ?? values[index]);
    };
    const [hours, planned] = [column(built.tasks.hours), column(built.tasks.plannedHours)];
    const told = hours.filter((one) => one !== null).length;
    expect(hours).toHaveLength(planned.length);
    expect(told > 0).toBe(state === built.states.built);
  });
});

/** A zero with a sign, as a format or a formula of words would make it. */
const signedZero = /(?<![\d.])-\$?0(?:\.0+)?(?![\d.])/;

test.each(names)(
  "%s: on sheet Look back no zero has a sign, in figures or in words",
  async (name) => {
    const { model, values } = await solved(name);
    const page = model.cells.filter(
      ({ sheet, table }) => sheet === "Look back" && table !== "effect_sizes",
    );
    const found = page.flatMap((cell) => {
      const value = values[cell.index];
      if (typeof value === "string") return signedZero.test(value) ? [`${cell.id}: ${value}`] : [];
      if (typeof value !== "number" || value >= 0) return [];
      const { quantity, decimals } = cell.declaration;
      const places = decimalsIn(quantity, model.system, decimals);
      const read = (quantity.percent ? value * 100 : value).toFixed(places);
      return signedZero.test(read) ? [`${cell.id}: ${value}`] : [];
    });
    expect(found).toEqual([]);
  },
);

test("differences in full add up to those that are read, within what is read as nothing", async () => {
  const { model, values } = await solved("boulder-twice.json");
  const of = (table: string, key: string) =>
    columnOf(model, table, key).cells.map(({ index }) => Number(values[index]));
  for (const key of ["more", "by_quantity", "by_rate"]) {
    const [read, full] = [of("task_effects", key), of("effect_sizes", key)];
    expect(full.some((one) => one !== 0 && Math.abs(one) < 0.05)).toBe(true);
    for (const [i, one] of full.entries()) expect(read[i]).toBe(Math.abs(one) < 0.05 ? 0 : one);
  }
});

test("the bars of a lost job are those of its plan; of others, of the tasks told", async () => {
  const bars = async (name: string) => {
    const { model, values } = await solved(name);
    const sum = (table: string, key: string) =>
      columnOf(model, table, key).cells.reduce((all, { index }) => all + Number(values[index]), 0);
    const [planned, taken] = [sum("stage_hours", "planned"), sum("stage_hours", "taken")];
    return { planned, taken, all: sum("built_tasks", "hours_planned") };
  };
  const lost = await bars("corner-lost.json");
  expect(lost.planned).toBeCloseTo(lost.all, 9);
  expect(lost.planned).toBeGreaterThan(10);
  expect(lost.taken).toBe(0);
  const part = await bars("side-hours.json");
  expect(part.planned).toBeLessThan(part.all);
  expect(part.taken).toBeGreaterThan(0);
});

test("two are told whole, two in part, one is lost for a reason, one moved a stone twice", async () => {
  const share = async (name: string) => (await solved(`${name}.json`)).of("share_of_hours");
  expect(await share("corner-oak")).toBeCloseTo(1, 6);
  expect(await share("three-falls")).toBeCloseTo(1, 6);
  for (const part of ["side-hours", "terrace-invoices"]) {
    expect(await share(part)).toBeLessThan(0.95);
    expect(await share(part)).toBeGreaterThan(0);
  }
  const lost = await solved("corner-lost.json");
  expect([lost.of("job_state"), lost.of("lost_reason")]).toEqual(["lost", "price"]);
  const twice = await solved("boulder-twice.json");
  expect(twice.of("back_first")).toMatch(/^Place boulders: .* The largest stone was moved twice/);
});
