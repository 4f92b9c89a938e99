import { readdirSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it, test } from "vitest";
import { loadJob } from "../../engine/book/load-job.js";
import { calculateFast } from "../../engine/evaluate/calculate.js";
import { CellError } from "../../engine/formula/value.js";
import { verifyTrail } from "../../engine/job/trail/verify.js";
import { columnOf } from "../../engine/template/model.js";
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
