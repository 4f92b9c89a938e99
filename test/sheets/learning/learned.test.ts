import jstat from "jstat";
import { describe, expect, test } from "vitest";
import { calculate } from "../../../engine/evaluate/calculate.js";
import { calculateFast } from "../../../engine/evaluate/calculate-fast.js";
import type { RowValues } from "../../../engine/job/record.js";
import { column, modelFor, valuesFor } from "./simulated.js";

const { studentt } = jstat.jStat;
const model = modelFor(250);

interface Task {
  readonly job: string;
  readonly quantity: number;
  readonly hours: number;
  readonly ended?: string;
  readonly unit?: string;
  readonly factor?: number;
  readonly reason?: string;
  readonly planned?: number;
}

const row = ({
  job,
  quantity,
  hours,
  ended = "2027-03-01",
  unit = "yd³",
  factor = 1,
  reason,
  planned,
}: Task): RowValues => ({
  ...{ job, task: "Dig", ended, code: "dig", method: "machine", quantity, unit, hours },
  time_factor: factor,
  ...(reason === undefined ? {} : { reason }),
  ...(planned === undefined ? {} : { quantity_planned: planned }),
});

const rates = [{ code: "dig", means: "Dig", unit: "yd³/hour", book_rate: 2 }];
const rules = { book_worth: 3, prior_spread: 0.3, prior_jobs: 4, half_life: 4, half_hours: 4 };

const given = (tasks: readonly Task[], more: Readonly<Record<string, number>> = {}) =>
  valuesFor(model, {
    ...{ ...rules, ...more },
    ...{ book_rates: rates, evidence: tasks.map(row) },
    job_list: [...new Set(tasks.map(({ job }) => job))].map((job) => ({
      job,
      ended: "2027-03-01",
    })),
    ways: [{ code: "dig", method: "machine" }],
  });

function learned(tasks: readonly Task[], more: Readonly<Record<string, number>> = {}) {
  const values = calculateFast(model, given(tasks, more));
  return (name: string, at = 0) =>
    name.includes(".")
      ? column(model, values, name)[at]
      : values[model.byId.get(name)?.index ?? -1];
}

const six: readonly Task[] = [
  { job: "A", quantity: 40, hours: 26 },
  { job: "B", quantity: 12, hours: 5 },
  { job: "C", quantity: 80, hours: 35 },
  { job: "D", quantity: 25, hours: 16, factor: 1.4 },
  { job: "E", quantity: 60, hours: 21 },
  { job: "F", quantity: 5, hours: 4 },
];

test("both evaluators come to the same", () => {
  expect(() => calculate(model, given(six))).not.toThrow();
});

/** Log of pace and weight by size, by hand. */
const paces = six.map(({ quantity, hours, factor = 1 }) => {
  const byBook = (quantity * factor) / 2;
  return { y: Math.log(byBook / hours), weight: byBook / (byBook + 4) };
});

/*
 * The posterior by another way: no formula of the conjugate family, but likelihood times prior at each point of a
 * grid of means and spreads, added up. Normal jobs with variance sigma^2 / weight, a normal prior of variance
 * sigma^2 / 3 around the book, and a scaled inverse chi-square prior of 4 degrees of freedom for sigma^2.
 */
function byGrid() {
  const prior = Math.log(1.3) ** 2;
  const steps = 1500;
  const thetas = Array.from({ length: steps }, (_, i) => -2 + (4 * (i + 0.5)) / steps);
  const mass = new Float64Array(steps);
  for (let k = 0; k < 1200; k++) {
    const logSigma = -4 + (5 * (k + 0.5)) / 1200;
    const variance = Math.exp(2 * logSigma);
    // the density of sigma^2 is (sigma^2)^-(4/2+1) exp(-4 s^2 / 2 sigma^2); of its logarithm one power more
    const ofSigma = -(4 / 2) * Math.log(variance) - (4 * prior) / (2 * variance);
    thetas.forEach((theta, i) => {
      let log = ofSigma - (3 * theta * theta) / (2 * variance) - 0.5 * Math.log(variance);
      for (const { y, weight } of paces) {
        log -= (weight * (y - theta) ** 2) / (2 * variance) + 0.5 * Math.log(variance);
      }
      mass[i] = (mass[i] as number) + Math.exp(log);
    });
  }
  const whole = mass.reduce((sum, one) => sum + one, 0);
  const quantile = (p: number) => {
    let sum = 0;
    for (let i = 0; i < steps; i++) {
      const part = (mass[i] as number) / whole;
      if (sum + part >= p) return (thetas[i] as number) + ((p - sum) / part - 0.5) * (4 / steps);
      sum += part;
    }
    return Number.NaN;
  };
  return { median: quantile(0.5), low: quantile(0.1), high: quantile(0.9) };
}

test("rate and interval are those of the posterior, added up over a grid", () => {
  const at = learned(six);
  const { median, low, high } = byGrid();
  const log = (name: string) => Math.log((at(name) as number) / 2);
  expect(log("learned.rate")).toBeCloseTo(median, 4);
  expect(log("learned.low")).toBeCloseTo(low, 3);
  expect(log("learned.high")).toBeCloseTo(high, 3);
});

test("the interval is Student's, with a library's quantile", () => {
  const at = learned(six);
  const [worth, center, deviation] = ["worth", "center", "deviation"].map(
    (key) => at(`learned.${key}`) as number,
  ) as [number, number, number];
  const t = studentt.inv(0.9, 4 + 6);
  const rate = (standardErrors: number) => 2 * Math.exp(center + standardErrors * deviation);
  expect(at("learned.high")).toBeCloseTo(rate(t / Math.sqrt(worth)), 6);
  expect(at("spreads.next_low")).toBeCloseTo(rate(-t * Math.sqrt(1 + 1 / worth)), 6);
});

describe("what would have been bid", () => {
  // job A was planned with 30 of the 40 that were dug
  const planned = six.map((task) => ({ ...task, planned: task.job === "A" ? 30 : task.quantity }));
  const logs = (rate: number) =>
    planned.map(({ planned: bid, hours, factor = 1 }) => Math.log(hours / ((bid * factor) / rate)));
  // all six end on the day of learning: each counts as one job, the book as three, the spread expected as four
  const overrun = (rate: number, share: number) => {
    const [y, worth] = [logs(rate), 9];
    const center = y.reduce((sum, one) => sum + one, 0) / worth;
    const squares = y.reduce((sum, one) => sum + one * one, 0);
    const variance = (4 * Math.log(1.15) ** 2 + squares - worth * center ** 2) / 10;
    const t = share === 0.5 ? 0 : studentt.inv(share, 10);
    return Math.exp(center + t * Math.sqrt(variance * (1 + 1 / worth))) - 1;
  };

  test("is the quantity planned by the book's rate, where none is marked", () => {
    const at = learned(planned);
    expect(at("whole_jobs.as_bid")).toBeCloseTo(15, 9);
    expect(at("bid_half_over")).toBeCloseTo(overrun(2, 0.5), 9);
    expect(at("bid_fifth_over")).toBeCloseTo(overrun(2, 0.8), 6);
    expect(at("bid_count")).toBe(6);
  });

  test("is by the learned rate, where that is marked to be taken", () => {
    const values = given(planned);
    const cell = model.byId.get("learned.take_it[1]");
    values[cell?.index ?? -1] = true;
    const found = calculateFast(model, values);
    const rate = column(model, found, "learned.new_rate")[0] as number;
    expect(rate).not.toBe(2);
    expect(found[model.byId.get("bid_fifth_over")?.index ?? -1]).toBeCloseTo(overrun(rate, 0.8), 6);
  });

  test("from few jobs is told, where it is marked", () => {
    const enough = (tasks: readonly Task[]) => {
      const values = given(tasks);
      values[model.byId.get("take_overrun")?.index ?? -1] = true;
      return calculateFast(model, values)[model.byId.get("overrun_of_enough")?.index ?? -1];
    };
    expect([enough(six), enough(six.slice(0, 4))]).toEqual([true, false]);
  });
});

test("with no job the book's rate stands, as wide as the office expects", () => {
  const at = learned([{ job: "A", quantity: 40, hours: 26, reason: "flood" }]);
  expect(at("learned.rate")).toBe(2);
  expect(at("learned.jobs")).toBe(0);
  expect(at("spreads.excluded")).toBe(1);
  expect(at("spreads.spread")).toBeCloseTo(0.3, 9);
  expect(at("spreads.spread", 1)).toBe(0);
});

test("very many like jobs come to their own rate, whatever the book says", () => {
  const many = Array.from({ length: 50 }, (_, i) => ({ job: `J-${i}`, quantity: 900, hours: 300 }));
  const at = learned(many, { book_worth: 0.1 });
  expect(at("learned.rate")).toBeCloseTo(3, 2);
});

test("a job of a half-life ago counts half", () => {
  const at = learned([{ job: "A", quantity: 40, hours: 20, ended: "2023-03-01" }]);
  expect(at("evidence.age_weight")).toBeCloseTo(0.5, 3);
  expect(at("evidence.weight")).toBeCloseTo(0.5 * (20 / 24), 3);
});

test("rows of one job and rate count as one job together", () => {
  const parted = learned([
    { job: "A", quantity: 10, hours: 10 },
    { job: "A", quantity: 30, hours: 30 },
  ]);
  const whole = learned([{ job: "A", quantity: 40, hours: 40 }]);
  expect(parted("learned.jobs")).toBe(1);
  for (const name of ["learned.rate", "learned.low", "spreads.spread"]) {
    expect(parted(name)).toBeCloseTo(whole(name) as number, 9);
  }
});

test("a metric job and a job in US units tell the same", () => {
  const us = learned([{ job: "A", quantity: 40, hours: 26 }]);
  const si = learned([{ job: "A", quantity: 40 * 0.764554857984, hours: 26, unit: "m³" }]);
  expect(si("learned.rate")).toBeCloseTo(us("learned.rate") as number, 9);
});

test("the planned time factor is taken out", () => {
  const at = learned([{ job: "A", quantity: 40, hours: 40, factor: 2 }]);
  expect(at("evidence.pace")).toBeCloseTo(1, 12);
});

describe("a job far from the others", () => {
  const far: readonly Task[] = [...six, { job: "G", quantity: 60, hours: 180 }];

  test("is told, stays in, and the rate without it stands beside", () => {
    const at = learned(far);
    expect(at("evidence.says", 6)).toBe("far: slower");
    expect(at("spreads.far")).toBe(1);
    expect(at("learned.jobs")).toBe(7);
    expect(at("spreads.without_far")).toBeCloseTo(learned(six)("learned.rate") as number, 9);
    expect(at("evidence.near", 6)).toBe(false);
  });

  test("its distance is from what the workbook says without it", () => {
    const without = learned(six);
    const [center, deviation, worth] = ["center", "deviation", "worth"].map(
      (key) => without(`learned.${key}`) as number,
    ) as [number, number, number];
    const y = Math.log(60 / 2 / 180);
    const distance = (y - center) / (deviation * Math.sqrt((30 + 4) / 30 + 1 / worth));
    expect(learned(far)("evidence.distance", 6)).toBeCloseTo(distance, 9);
  });

  test("is left out with a reason, and counted", () => {
    const at = learned([...six, { job: "G", quantity: 60, hours: 180, reason: "ledge blasted" }]);
    expect(at("learned.rate")).toBeCloseTo(learned(six)("learned.rate") as number, 12);
    expect(at("spreads.excluded")).toBe(1);
    expect(at("evidence.says", 6)).toBe("excluded");
    expect(at("evidence.near", 6)).toBe(true);
  });
});

test("a unit of another kind is not compared, and told", () => {
  const at = learned([{ job: "A", quantity: 40, hours: 26, unit: "ft" }]);
  expect(at("evidence.comparable")).toBe(false);
  expect(at("learned.jobs")).toBe(0);
});

// as a person may type it: a record with such a unit is refused
test.each([
  ["a unit that nobody knows", { means: "Fill", code: "fill", unit: "yd³ an hour", book_rate: 2 }],
  ["a code used twice", { means: "Dig again", code: "dig", unit: "yd³/hour", book_rate: 2 }],
  ["no rate", { means: "Fill", code: "fill", unit: "yd³/hour", book_rate: 0 }],
])("a rate of the book with %s is told", (_, other) => {
  const values = given(six);
  for (const [key, value] of Object.entries(other)) {
    const cell = model.tables.get("book_rates")?.columns.get(key)?.cells[1];
    values[cell?.index ?? -1] = value;
  }
  expect(column(model, calculateFast(model, values), "book_rates.comparable")[1]).toBe(false);
});

test("what goes into the book has three digits", () => {
  const at = learned(six);
  expect(at("learned.new_rate")).toBe(Number((at("learned.rate") as number).toPrecision(3)));
});
