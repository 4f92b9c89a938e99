import { describe, expect, test } from "vitest";
import { answersOf } from "../../support/water.js";
import { pump } from "../../support/water-jobs.js";

// One fall, two outlets, one pump, on paper. Formulas and figures with their sources stand in the lines.
const answers = answersOf(
  {
    falls: [{ name: "Fall", level: 1, width: 4, drop: 3, lip_type: "sharp edge" }],
    runs: [
      { name: "Run", after_level: 1, length: 10, width: 3, side: 0, fall: 0.2, bed: "gravel" },
    ],
    pipe_lines: [
      {
        name: "Near",
        outlet_level: 1,
        pipe_size: "2 in",
        length: 20,
        override_flow: 50,
        elbows_90: 2,
      },
      { name: "Far", outlet_level: 1, pipe_size: "2 in", length: 30, elbows_90: 3 },
    ],
    main_size: "3 in",
    main_length: 50,
    main_elbows_90: 2,
    main_valves: 1,
    check_valve_fitted: true,
    pump_choice: "P",
  },
  [
    pump("P", [
      [0, 20, 300],
      [60, 16, 350],
      [120, 8, 400],
    ]),
  ],
);

// Looks, common practice: an ordinary sheet takes 100 gal/h for each inch of lip.
const wanted = (4 * 12 * 100) / 60; // 80 gal/min, for 48 in of lip
const near = 50;
const far = wanted - near; // 30 gal/min

// Schedule 40 (ASTM D1785): outside less two least walls.
const two = 2.375 - 2 * 0.154; // 2.067 in
const three = 3.5 - 2 * 0.216; // 3.068 in

/** Speed in ft/s: 0.4085 Q/d² (fire-protection handbooks). */
const speedIn = (flow: number, bore: number) => (0.40852 * flow) / bore ** 2;
/** Hazen-Williams with C 150, EPANET's constants in gal/min and inches: 10.462 and 4.871. */
const friction = (flow: number, length: number, bore: number) =>
  (10.4623 * length * flow ** 1.852) / (150 ** 1.852 * bore ** 4.871);
const velocityHead = (speed: number) => speed ** 2 / (2 * 32.174);

// Crane TP 410: elbow 30 fT, branch of a tee 60 fT, ball valve 3 fT, swing check 100 fT; fT .019 and .018;
// exit 1, flush entrance 0.5; contraction 0.5 (1 - β²).
const step = 0.5 * (1 - (two / three) ** 2); // 0.2730
const nearLoss = (60 + 2 * 30 + 3) * 0.019 + step + 1; // 3.610
const farLoss = (60 + 3 * 30 + 3) * 0.019 + step + 1; // 4.180
const mainLoss = (2 * 30 + 3 + 100) * 0.018 + 0.5; // 3.434

// The top step stands at the drop of 3 ft and the run's fall of 0.2 ft.
const lift = 3.2;
const nearHead = lift + friction(near, 20, two) + nearLoss * velocityHead(speedIn(near, two));
const farHead = lift + friction(far, 30, two) + farLoss * velocityHead(speedIn(far, two));
const manifold = Math.max(nearHead, farHead); // the near one is hungrier: it carries more
// 50 ft of main and the 6 ft of flexible pipe at the pump that a bid starts from
const mainRun = 56;
const mainHead = friction(wanted, mainRun, three) + mainLoss * velocityHead(speedIn(wanted, three));
const total = manifold + mainHead;

describe("a bid's water on paper", () => {
  test("flows", () => {
    expect(answers.number("falls.design_flow", 1)).toBeCloseTo(wanted, 9);
    expect(answers.number("pipe_lines.design_flow", 1)).toBe(near);
    expect(answers.number("pipe_lines.design_flow", 2)).toBeCloseTo(far, 9);
    expect(answers.number("total_design_flow")).toBeCloseTo(wanted, 9);
  });

  test("fittings", () => {
    expect(answers.number("pipe_lines.loss_open", 1)).toBeCloseTo(nearLoss, 9);
    expect(answers.number("pipe_lines.loss_open", 2)).toBeCloseTo(farLoss, 9);
    expect(answers.number("main_loss_coefficient")).toBeCloseTo(mainLoss, 9);
  });

  test("heads", () => {
    expect(answers.number("main_speed")).toBeCloseTo(speedIn(wanted, three), 3);
    expect(answers.number("pipe_lines.head_required", 1)).toBeCloseTo(nearHead, 2);
    expect(answers.number("pipe_lines.head_required", 2)).toBeCloseTo(farHead, 2);
    expect(answers.number("main_loss")).toBeCloseTo(mainHead, 2);
    expect(answers.number("total_dynamic_head")).toBeCloseTo(total, 2);
    // fittings alone are K v²/2g, whole: 0.4085 is good to four digits, its square to 0.02 %
    const fittings = mainLoss * velocityHead(speedIn(wanted, three));
    expect(Math.abs(answers.number("main_fitting_loss") / fittings - 1)).toBeLessThan(0.0002);
  });

  test("the far valve burns the rest", () => {
    const burn = nearHead - farHead;
    const loss = burn / velocityHead(speedIn(far, two));
    expect(answers.number("pipe_lines.excess_head", 2)).toBeCloseTo(burn, 2);
    expect(answers.number("pipe_lines.valve_loss_required", 2) / loss).toBeCloseTo(1, 2);
    // between 20° (1.56) and 25° (3.10), 25° and 30° (5.47) ... on the logarithm of K
    const rows: [number, number][] = [
      [20, 1.56],
      [25, 3.1],
      [30, 5.47],
      [35, 9.68],
      [40, 17.3],
    ];
    const above = rows.findIndex(([, k]) => k > loss);
    const [from, low] = rows[above - 1] ?? [0, 0];
    const [to, high] = rows[above] ?? [0, 0];
    const turned = from + ((to - from) * Math.log(loss / low)) / Math.log(high / low);
    expect(answers.number("pipe_lines.valve_setting", 2)).toBeCloseTo(turned, 1);
  });

  test("the pump's speed: 80 gal/min at the total head", () => {
    // line from (60, 16) to (120, 8): 24 - Q/7.5; at speed n: 24 n² - 80 n/7.5 = head
    const b = 80 / 7.5;
    const n = (b + Math.sqrt(b * b + 4 * 24 * total)) / (2 * 24);
    expect(80 / n).toBeGreaterThan(60); // so it is that line
    expect(answers.number("pump_speed")).toBeCloseTo(n, 3);
    // drawn power: 350 W at 60, 400 W at 120 gal/min, by the cube of the speed
    const watts = (350 + (50 * (80 / n - 60)) / 60) * n ** 3;
    expect(answers.number("pump_watts")).toBeCloseTo(watts, 0);
    // 12 h a day, 30.4375 days a month, $0.16: Job's defaults
    const month = (watts / 1000) * 12 * 30.4375 * 0.16;
    expect(answers.number("energy_cost_a_month") / month).toBeCloseTo(1, 2);
    expect(answers.number("energy_cost_a_year") / (8 * month)).toBeCloseTo(1, 2);
  });

  test("over the lip", () => {
    const cubicFeet = wanted / 448.831;
    const depth = (cubicFeet / (3.33 * 4)) ** (2 / 3); // Francis, ft
    expect(answers.number("falls.lip_depth", 1)).toBeCloseTo(12 * depth, 3);
    const brink = 0.715 * ((cubicFeet / 4) ** 2 / 32.174) ** (1 / 3); // Rouse
    const speed = cubicFeet / 4 / brink;
    expect(answers.number("falls.sheet_speed", 1)).toBeCloseTo(speed, 3);
    expect(answers.number("falls.throw", 1)).toBeCloseTo(speed * Math.sqrt((2 * 3) / 32.174), 3);
  });

  test("down the run", () => {
    // Ferguson's law, rectangular, gravel of 1 in, slope 0.02; the depth found must carry the flow
    const found = answers.number("runs.depth_likely", 1) / 12;
    const radius = (3 * found) / (3 + 2 * found);
    const x = radius / (1 / 12);
    const speed =
      (Math.sqrt(32.174 * radius * 0.02) * 6.5 * 2.5 * x) /
      Math.sqrt(6.5 ** 2 + 2.5 ** 2 * x ** (5 / 3));
    expect(3 * found * speed * 448.831).toBeCloseTo(wanted, 2);
    // Manning beside it, n 0.025
    const manning = answers.number("runs.depth_manning", 1) / 12;
    const carried =
      (1.486 / 0.025) *
      3 *
      manning *
      ((3 * manning) / (3 + 2 * manning)) ** (2 / 3) *
      Math.sqrt(0.02);
    expect(carried * 448.831).toBeCloseTo(wanted, 2);
    // the allowance of a half that a bid starts from
    const depth = 1.5 * found;
    const area = 3 * depth;
    expect(answers.number("runs.depth", 1) / 12).toBeCloseTo(depth, 9);
    expect(answers.number("runs.water_held", 1)).toBeCloseTo(area * 10 * 7.48052, 2);
    // between the gravel, voids 38 %, 4 in deep: upright sides count as bed; three quarters drain
    const between = (3 + 2 * depth) * 10 * (4 / 12) * 0.38 * 7.48052;
    expect(answers.number("bed_water")).toBeCloseTo(0.75 * between, 2);
    expect(answers.number("bed_water_kept")).toBeCloseTo(0.25 * between, 2);
    const lip = answers.number("lip_water");
    expect(answers.number("stream_water")).toBeCloseTo(
      area * 10 * 7.48052 + 0.75 * between + lip,
      2,
    );
  });

  test("the check valve keeps the pipes full", () => {
    expect(answers.number("drain_back")).toBe(0);
    expect(answers.number("main_water")).toBeCloseTo(
      ((Math.PI / 4) * three ** 2 * mainRun * 12) / 231,
      6,
    );
    const branches = ((Math.PI / 4) * two ** 2 * (20 + 30) * 12) / 231;
    expect(answers.number("pipe_water")).toBeCloseTo(answers.number("main_water") + branches, 6);
  });
});

describe("tees and cap of the manifold", () => {
  const pieces = (ways: string[]) => {
    const pipe_lines = ways.map((tee) => ({ outlet_level: 1, pipe_size: "2 in", tee }));
    const falls = [{ name: "Fall", level: 1, width: 4, drop: 3 }];
    const solved = answersOf({ falls, pipe_lines }, [], { fast: true });
    return [solved.number("manifold_tees"), solved.number("manifold_caps")];
  };
  test.each([
    ["three tees end in a cap", ["square tee", "square tee", "sweep along the flow"], [3, 1]],
    ["a branch at the end takes the cap's place", ["square tee", "end of the manifold"], [1, 0]],
    ["a single pipe has neither", ["no tee"], [0, 0]],
  ])("%s", (_, ways, counted) => {
    expect(pieces(ways)).toEqual(counted);
  });
});

describe("a stream that the tables do not hold for is told", () => {
  const run = (reach: Record<string, string | number>) =>
    answersOf(
      {
        falls: [{ name: "Fall", level: 1, width: 4, drop: 3 }],
        runs: [{ name: "Run", after_level: 1, length: 10, ...reach }],
        pipe_lines: [{ name: "One", outlet_level: 1, pipe_size: "2 in", override_flow: 80 }],
        pump_choice: "P",
      },
      [
        pump("P", [
          [0, 20],
          [60, 16],
          [120, 8],
        ]),
      ],
    );

  test("a bed of mortar keeps no water", () => {
    expect(run({ bed: "stone set in mortar" }).number("bed_water")).toBe(0);
  });

  test("waves before the water shoots", () => {
    const wavy = run({ bed: "troweled mortar", fall: 0.055 });
    expect(wavy.number("runs.froude", 1)).toBeGreaterThan(0.85);
    expect(wavy.number("runs.froude", 1)).toBeLessThan(1);
    expect(wavy.yes("runs.runs_calm", 1)).toBe(false);
    expect(run({ bed: "cobble", fall: 0.1 }).yes("runs.runs_calm", 1)).toBe(true);
  });
});
