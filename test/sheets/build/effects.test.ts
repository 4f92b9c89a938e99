import { expect, test } from "vitest";
import type { InputValues } from "../../../engine/job/record.js";
import { effects, exact, lips, machine, type Row, rows } from "./effects.js";
import { smallYard, yard } from "./small-yard.js";

const price = (changed: InputValues) => yard({ ...exact, ...changed }).figure("price");

test.each(effects)("%s", (_, from, to, byHand, byMachine, why) => {
  const share = (base: InputValues) => price({ ...base, ...to }) / price({ ...base, ...from }) - 1;
  const [hand, withMachine] = [share({}), share(machine)];
  expect(hand, why).toBeGreaterThan(byHand[0]);
  expect(hand, why).toBeLessThan(byHand[1]);
  expect(withMachine, why).toBeGreaterThan(byMachine[0]);
  expect(withMachine, why).toBeLessThan(byMachine[1]);
});

test("twice the width and twice the drop cost more than both apart: the face is their product", () => {
  const base = price({});
  const apart = price(lips(2, 1)) - base + price(lips(1, 2)) - base;
  expect(price(lips(2, 2)) - base).toBeGreaterThan(1.1 * apart);
});

test("a fall of twice the width and three times the height takes over half as many hours again", () => {
  const hours = (of: InputValues) => {
    const one = yard(of);
    const tasks = [
      "Set out falls, build their base",
      "Build back walls of the falls",
      "Choose and set the lips",
    ];
    return [...tasks, "Build the faces of the falls"].reduce(
      (sum, task) => sum + one.at("tasks", "task", task, "hours"),
      0,
    );
  };
  expect(hours(lips(2, 3)) / hours({})).toBeGreaterThan(2.5);
});

test("a fall split over two lips costs less than two falls of those widths: it shares one set-up", () => {
  const falls = (smallYard.falls as readonly Row[]).map((row) =>
    row.name === "Split, right" ? { ...row, level: 4 } : row,
  );
  const apart = yard({ ...exact, falls } as InputValues);
  expect(apart.at("tasks", "task", "Set out falls, build their base", "hours")).toBe(12);
  expect(yard().at("tasks", "task", "Set out falls, build their base", "hours")).toBe(8);
});

test("a pot asks for no lip stone, no face and no liner, and is lifted to: its height is the drop of its level", () => {
  const taller = rows("falls", (row) => (row.lip_type === "pot rim" ? { ...row, drop: 4 } : row));
  const [low, high] = [yard(), yard(taller)];
  for (const same of ["stone_tons", "liner_area_bought", "lip_length", "fall_face"]) {
    expect(high.figure(same), same).toBeCloseTo(low.figure(same), 9);
  }
  expect(high.figure("total_dynamic_head") - low.figure("total_dynamic_head")).toBeGreaterThan(1);
  // 4.71 ft of rim at 10 gal/h for each inch, and 1.77 ft² x 20 in of water
  expect(low.figure("pots.rim_flow[1]")).toBeCloseTo(10, 4);
  expect(low.figure("pots.water[1]")).toBeCloseTo(1.7671 * (20 / 12) * 7.48052, 2);
  expect(low.figure("pots.full[1]")).toBeCloseTo(140 + 1.7671 * (20 / 12) * 62.4, 1);
});
