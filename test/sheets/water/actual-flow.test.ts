import { describe, expect, test } from "vitest";
import { answersOf } from "../../support/water.js";
import { yard, yardPumps } from "../../support/water-jobs.js";

// What was planned (flows wanted, speed and valves calculated) against what the balance then finds.
describe.each(["V", "F"])("planned and as set agree, pump %s", (code) => {
  const answers = answersOf({ ...yard, pump_choice: code }, yardPumps);

  test("each flow", () => {
    for (const row of [1, 2]) {
      const wanted = answers.number("pipe_lines.design_flow", row);
      expect(answers.number("pipe_lines.actual_flow", row) / wanted).toBeCloseTo(1, 5);
    }
  });

  test("head at the manifold and of the pump", () => {
    expect(answers.number("manifold_head")).toBeCloseTo(answers.number("manifold_available"), 4);
    expect(answers.number("pump_head")).toBeCloseTo(answers.number("pump_design_head"), 4);
  });

  test("what the shortlist promised is what the pump draws", () => {
    const row = code === "V" ? 1 : 2;
    expect(answers.number("pump_watts")).toBeCloseTo(answers.number("shortlist.watts", row), 2);
    expect(answers.number("energy_cost_a_year")).toBeCloseTo(
      answers.number("shortlist.year_cost", row),
      2,
    );
  });
});

test("a pump of fixed speed has its surplus burned by every valve", () => {
  const answers = answersOf({ ...yard, pump_choice: "F" }, yardPumps);
  expect(answers.number("pump_speed")).toBe(1);
  expect(answers.number("pipe_lines.valve_setting", 1)).toBeGreaterThan(10);
  expect(answers.number("pipe_lines.valve_setting", 2)).toBeGreaterThan(
    answers.number("pipe_lines.valve_setting", 1),
  );
  expect(answers.text("pipe_lines.valve_words", 1)).toMatch(/^turn \d+° from open$/);
});

test("at the calculated speed the hungriest outlet's valve stays open", () => {
  const answers = answersOf(yard, yardPumps);
  expect(answers.number("pipe_lines.valve_setting", 1)).toBeLessThan(0.001);
  expect(answers.text("pipe_lines.valve_words", 1)).toBe("leave fully open");
});

test("what no one chose is calculated; the estimator's choice stands", () => {
  const { pump_choice: _, ...open } = yard;
  const calculated = answersOf(open, yardPumps);
  expect(calculated.text("pump_code")).toBe(calculated.text("cheapest_pump"));
  const chosen = answersOf({ ...open, pump_choice: "V", override_speed: 0.95 }, yardPumps);
  expect(chosen.text("pump_code")).toBe("V");
  expect(chosen.number("pump_speed")).toBe(0.95);
  expect(chosen.number("pipe_lines.actual_flow", 1)).toBeCloseTo(60, 3);
});

test("all open at full speed gives more than wanted, and less fairly", () => {
  const answers = answersOf(yard, yardPumps);
  expect(answers.number("open_total")).toBeGreaterThan(80);
  expect(answers.number("open_lines.flow", 2)).toBeGreaterThan(20);
});
