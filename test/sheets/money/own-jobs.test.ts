import { describe, expect, it, test } from "vitest";
import { type Changes, changedDemo, failingIn, model } from "../../support/changed-demo.js";

const at = (changes: Changes) => {
  const values = changedDemo(changes);
  const of = (id: string) => values[model.byId.get(id)?.index as number];
  return { of, num: (id: string) => of(id) as number, failing: failingIn(values) };
};

const learned = { hours_half_over: 0.05, hours_fifth_over: 0.2, hours_over_jobs: 12 };

test("an office that learned nothing is asked for nothing", () => {
  const { num, of, failing } = at({});
  expect(num("hours_p_eighty")).toBe(0);
  expect(num("contingency_to_eighty")).toBe(0);
  expect(of("own_jobs_said")).toBe("");
  expect(failing.has("contingency_covers_own")).toBe(false);
});

describe("a bid of an office whose jobs ran over by 5 % in half, and by 20 % in one of five", () => {
  const { num, of, failing } = at(learned);

  it("tells man-hours and cost of labor so much higher", () => {
    expect(num("hours_p_fifty")).toBeCloseTo(1.05 * num("man_hours"), 9);
    expect(num("hours_p_eighty")).toBeCloseTo(1.2 * num("man_hours"), 9);
    expect(num("labor_p_eighty")).toBeCloseTo(1.2 * num("labor_cost"), 6);
  });

  it("tells the contingency that pays for that, with its overhead, and asks for it", () => {
    const needed = 0.2 * num("labor_cost") * (1 + num("overhead_share"));
    expect(num("contingency_to_eighty")).toBeCloseTo(needed, 2);
    expect(failing.has("contingency_covers_own")).toBe(true);
    expect(of("bid_stands")).toBe(at({}).of("bid_stands"));
  });

  it("leaves the price as it is", () => {
    for (const name of ["price", "total_cost", "contingency_cost", "contract_price"]) {
      expect(num(name)).toBe(at({}).num(name));
    }
  });

  it("asks for no more once the share that it names is given", () => {
    const share = num("contingency_share_to_eighty");
    const raised = at({ ...learned, contingency_share: share });
    expect(raised.failing.has("contingency_covers_own")).toBe(false);
    const less = at({ ...learned, contingency_share: share - 0.0011 });
    expect(less.failing.has("contingency_covers_own")).toBe(true);
  });
});

test.each([
  ["P80 without P50", { hours_fifth_over: 0.2, hours_over_jobs: 3 }],
  ["no jobs", { hours_half_over: 0.05, hours_fifth_over: 0.2 }],
  ["P80 under P50", { ...learned, hours_fifth_over: 0.01 }],
])("%s is told and counts for nothing", (_, changes) => {
  const { num, failing } = at(changes);
  expect(failing.has("overrun_told_whole")).toBe(true);
  expect(num("hours_p_eighty")).toBe(0);
});

test("few jobs are called few", () => {
  expect(at({ ...learned, hours_over_jobs: 4 }).of("own_jobs_said")).toMatch(
    /too few to tell much/,
  );
  expect(at(learned).of("own_jobs_said")).not.toMatch(/too few/);
});
