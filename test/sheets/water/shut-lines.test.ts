import { describe, expect, test } from "vitest";
import type { RowValues } from "../../../engine/job/record.js";
import { shownValue } from "../../../engine/job/shown-value.js";
import type { Cell } from "../../../engine/template/model.js";
import { answersOf } from "../../support/water.js";
import { pump, yardPumps } from "../../support/water-jobs.js";

const falls = [1, 2].map((step) => ({ name: `Fall ${step}`, level: step, width: 3, drop: 2 }));
const wanted: RowValues = { name: "Wanted", outlet_level: 1, pipe_size: "2 in", length: 20 };
const spare: RowValues = { ...wanted, name: "Spare", length: 30, override_flow: 0 };

const solve = (pipe_lines: RowValues[], given: Record<string, unknown> = {}, pumps = yardPumps) =>
  answersOf({ falls, pipe_lines, pump_choice: "V", ...given } as never, pumps, { fast: true });

describe("a line whose flow is not wanted", () => {
  const answers = solve([wanted, spare]);
  const alone = solve([wanted]);

  test("is shut, and the crew is told so", () => {
    expect(answers.yes("pipe_lines.shut", 2)).toBe(true);
    expect(answers.number("pipe_lines.valve_setting", 2)).toBe(90);
    expect(answers.text("pipe_lines.valve_words", 2)).toBe("closed");
    expect(answers.yes("pipe_lines.valve_in_table", 2)).toBe(true);
  });

  test("shows no endless loss, and no sentence on what a stop draws off", () => {
    const shownAt = (name: string) =>
      shownValue(answers.model, answers.model.byId.get(`${name}[2]`) as Cell, answers.values);
    expect(shownAt("pipe_lines.valve_loss")).toBe("shut");
    expect(shownAt("pipe_lines.local_actual")).toBe("shut");
    expect(shownAt("actual_lines.stands")).toBe("shut");
    expect(shownAt("actual_lines.fittings")).toBe("shut");
    expect(shownAt("pipe_lines.siphon_words")).toBe("");
    expect(shownAt("pipe_lines.drawn_said").length).toBeLessThan(8);
    expect(shownAt("pipe_lines.above_said").length).toBeLessThan(8);
  });

  test("takes no water, and changes nothing for the others", () => {
    expect(answers.number("pipe_lines.actual_flow", 2)).toBe(0);
    for (const name of ["total_flow", "total_dynamic_head", "pump_speed", "pump_watts"]) {
      expect(answers.number(name)).toBeCloseTo(alone.number(name), 9);
    }
  });

  test("does not ask for head, however high it stands", () => {
    const high = solve([wanted, { ...spare, measured_height: 40 }]);
    expect(high.number("highest_head_required")).toBeCloseTo(
      alone.number("highest_head_required"),
      9,
    );
    expect(high.number("highest_outlet")).toBeCloseTo(alone.number("highest_outlet"), 9);
    expect(high.yes("pipe_lines.has_flow", 2)).toBe(true);
  });

  test("is open with all the others in the test with all valves open", () => {
    expect(answers.number("open_lines.flow", 2)).toBeGreaterThan(10);
  });

  test("keeps its tee", () => {
    expect(answers.number("manifold_tees")).toBe(2);
  });

  test("opened by choice, runs, and fails the check of its flow", () => {
    const opened = solve([wanted, { ...spare, override_valve_setting: 0 }]);
    expect(opened.number("pipe_lines.actual_flow", 2)).toBeGreaterThan(10);
    expect(opened.yes("pipe_lines.flow_close", 2)).toBe(false);
  });
});

describe("a line whose flow is left blank, at a level that lacks none", () => {
  const full: RowValues = { ...wanted, override_flow: 90 };
  const told = (row: RowValues) => {
    const answers = solve([full, { ...wanted, name: "Jet", ...row }]);
    return [answers.yes("pipe_lines.pot_gets_flow", 2), answers.yes("pipe_lines.gets_flow", 2)];
  };
  const pot = { pot_surface: 3, pot_depth: 24 };
  test.each([
    ["is worth a look", {}, [true, false]],
    ["stops the bid where it fills a pot", pot, [false, true]],
    ["shut on purpose by a flow of 0", { ...pot, override_flow: 0 }, [true, true]],
    ["shut on purpose by its valve", { ...pot, override_valve_setting: 90 }, [true, true]],
    ["given a flow", { ...pot, override_flow: 15 }, [true, true]],
  ])("%s", (_, row, holds) => {
    expect(told(row)).toEqual(holds);
  });
});

describe("limits of speed test the flow as it will run", () => {
  // Speed: 0.4085 Q/d² (fire-protection handbooks).
  const speedIn = (flow: number, bore: number) => (0.40852 * flow) / bore ** 2;

  // 60 gal/min wanted through 2 in: 5.74 ft/s; a strong pump at full speed, its valve open, gives more
  const strong = [
    pump("V", [
      [0, 40],
      [100, 38],
      [200, 30],
    ]),
  ];
  const fast = solve([{ ...wanted, override_valve_setting: 0 }], { override_speed: 1 }, strong);

  test("in a branch", () => {
    const flow = fast.number("pipe_lines.actual_flow", 1);
    expect(speedIn(60, 2.067)).toBeLessThan(8);
    expect(fast.number("pipe_lines.speed", 1)).toBeCloseTo(speedIn(60, 2.067), 2);
    expect(fast.number("pipe_lines.speed_running", 1)).toBeCloseTo(speedIn(flow, 2.067), 2);
    expect(fast.yes("pipe_lines.not_too_fast", 1)).toBe(false);
  });

  test("in the main", () => {
    expect(speedIn(60, 3.068)).toBeLessThan(5);
    expect(fast.number("main_speed_running")).toBeCloseTo(
      speedIn(fast.number("total_flow"), 3.068),
      2,
    );
    expect(fast.yes("main_not_too_fast")).toBe(false);
  });

  test("and the flow wanted, where less runs", () => {
    const slow = solve([{ ...wanted, override_flow: 100 }], { override_speed: 0.5 });
    expect(slow.number("pipe_lines.actual_flow", 1)).toBeLessThan(60);
    expect(slow.yes("pipe_lines.not_too_fast", 1)).toBe(false);
  });
});

describe("a measured height against drops, runs and rim", () => {
  // two drops of 2 ft: step 1 stands 4 ft above the running basin
  const measured = (measured_height: number, given = {}) =>
    solve([{ ...wanted, measured_height }], given);

  test.each([
    [4.4, true],
    [3.6, true],
    [4.6, false],
    [9, false],
  ])("%d ft", (height, agrees) => {
    expect(measured(height).yes("pipe_lines.height_agrees", 1)).toBe(agrees);
  });

  test("names both", () => {
    expect(measured(9).said("pipe_lines.height_agrees", 1)).toMatch(
      /^Wanted was measured 9\.00 ft over basin water, but drops, runs, rim and pot make 4\.00 ft\./,
    );
  });

  test("by as much as the office allows", () => {
    expect(measured(9, { height_tolerance: 6 }).yes("pipe_lines.height_agrees", 1)).toBe(true);
  });
});
