import { describe, expect, test } from "vitest";
import { yard } from "./small-yard.js";

const byHand = yard();
// the steps ramped by the estimator's word, and a small machine brought through the gate of 4 ft
const small = yard({ method_choice: "small machine" });
// a gate of 10 ft and no steps: the machine comes in by itself
const wide = yard({ gate_width: 10, access_steps: 0 });

test("the gate, the steps and the slope decide, and the estimator may overrule them", () => {
  const method = (changed: Parameters<typeof yard>[0]) => yard(changed).value("work_method");
  expect(method({ gate_width: 10, access_steps: 0 })).toBe("machine");
  expect(method({ gate_width: 4, access_steps: 0 })).toBe("small machine");
  expect(method({ gate_width: 3.4, access_steps: 0 })).toBe("by hand");
  expect(method({ gate_width: 10, access_steps: 1 })).toBe("by hand");
  expect(method({ gate_width: 10, access_steps: 0, access_slope: 0.3 })).toBe("by hand");
  expect(small.value("method_fits")).toBe(false);
  expect(wide.value("method_fits")).toBe(true);
});

test("by hand nothing of a machine is paid: no hours, no hire, no delivery, no mats", () => {
  expect(byHand.figure("machine_hours")).toBe(0);
  for (const what of ["Machine", "Small machine"]) {
    expect(byHand.at("equipment", "what", `${what} on hire`, "cost")).toBe(0);
    expect(byHand.at("equipment", "what", `${what} brought and fetched`, "cost")).toBe(0);
  }
  expect(byHand.figure("ground_mats")).toBe(0);
});

test("each machine is hired for its own way in", () => {
  expect(small.at("equipment", "what", "Small machine on hire", "cost")).toBeGreaterThan(0);
  expect(small.at("equipment", "what", "Machine on hire", "cost")).toBe(0);
  expect(wide.at("equipment", "what", "Machine on hire", "cost")).toBeGreaterThan(0);
  expect(wide.at("equipment", "what", "Small machine on hire", "cost")).toBe(0);
});

describe("the same yard three ways", () => {
  test("hours fall with the machine's size", () => {
    const hours = [byHand, small, wide].map((one) => one.figure("task_hours"));
    expect(hours).toEqual([...hours].sort((a, b) => b - a));
  });

  test("hire and haul cost more with a machine, labor less: by hand wins on hire, a machine on hours", () => {
    expect(byHand.figure("equipment_cost")).toBeLessThan(small.figure("equipment_cost"));
    expect(byHand.figure("labor_cost")).toBeGreaterThan(small.figure("labor_cost"));
    expect(small.figure("labor_cost")).toBeGreaterThanOrEqual(wide.figure("labor_cost"));
  });

  test("prices lie within a quarter of one another: a yard as small as this is dug by hand for a little more", () => {
    const prices = [byHand, small, wide].map((one) => one.figure("price"));
    expect(Math.max(...prices) / Math.min(...prices)).toBeLessThan(1.25);
  });

  test("material is the same", () => {
    for (const one of [small, wide])
      expect(one.figure("material_cost")).toBeCloseTo(byHand.figure("material_cost"), 9);
  });
});

test("by hand the heaviest stone is held against the crew, not the machine's chart", () => {
  expect(byHand.value("crew_moves_stone")).toBe(true);
  expect(yard({ crew_size: 1 }).value("crew_moves_stone")).toBe(false); // 217 lb against 200
  expect(byHand.value("machine_lifts")).toBe(true);
});
