import { describe, expect, test } from "vitest";
import { type ProductionRate, practice } from "../../../sheets/parts/rates.js";
import { wholeOf } from "../../../sheets/parts/whole.js";
import { handDigging, wheeling } from "../../../sheets/tables/hand-work.js";
import { waterfallParts } from "../../../sheets/templates/waterfall.js";

const { rates, tasks } = wholeOf(waterfallParts);
const production = rates.filter((one): one is ProductionRate => one.group === "production");
const usual = (code: string): number => {
  const found = rates.find((one) => one.code === code)?.usual;
  if (found === undefined) throw new Error(`no rate ${code} with a usual figure`);
  return found;
};

test("every production rate and site factor has what a new book opens with, and says where it is from", () => {
  const without = rates.filter(
    ({ group, usual: figure, source = "" }) =>
      ["production", "site"].includes(group) && !((figure ?? 0) > 0 && source.length > 0),
  );
  expect(without.map(({ code }) => code)).toEqual([]);
  expect(production.length).toBeGreaterThan(40);
});

describe("a rate with a band lies within it", () => {
  test.each(
    production.filter(({ band }) => band !== undefined).map((one) => [one.code, one] as const),
  )("%s", (_, one) => {
    expect(one.usual).toBeGreaterThanOrEqual((one.band?.least ?? 0) * 0.999);
    expect(one.usual).toBeLessThanOrEqual((one.band?.most ?? 0) * 1.001);
  });
});

describe("hand digging, with its factor for the ground, lies between the sources", () => {
  test.each(["soft", "common", "hard", "rock"] as const)("%s", (grade) => {
    const rate = usual("dig-hand") / usual(`soil-hand-${grade}`);
    // one source of rock, and two of common earth that nearly agree: 3% either way
    expect(rate).toBeGreaterThan(handDigging[grade].least * 0.97);
    expect(rate).toBeLessThan(handDigging[grade].most * 1.03);
  });
});

describe("wheeling, by its distance, lies by the sources within a tenth", () => {
  test.each(wheeling.map((one) => [Math.round(one.feet), one] as const))(
    "%d ft",
    (_, { feet, band }) => {
      const rate = usual("wheel") / (1 + (usual("haul-by-hand") / 100) * (feet / 100));
      expect(rate).toBeGreaterThan(band.least * 0.9);
      expect(rate).toBeLessThan(band.most * 1.1);
    },
  );
});

test("by hand no task is quicker than with a machine", () => {
  for (const { task, ways } of tasks) {
    expect(ways.byHand.usual, task).toBeLessThanOrEqual(ways.rate.usual);
  }
});

test("a machine runs only in tasks that name its share, never more than the crew's hours", () => {
  for (const { task, ways } of tasks) {
    expect(ways.machineShare, task).toBeGreaterThanOrEqual(0);
    expect(ways.machineShare, task).toBeLessThan(1);
    if (ways.byHand !== ways.rate) expect(ways.machineShare, task).toBeGreaterThan(0);
  }
});

test("what no one has published says so", () => {
  expect(practice).toBe("common practice, no source");
});
