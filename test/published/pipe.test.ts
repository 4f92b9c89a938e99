import { describe, expect, test } from "vitest";
import { pipeFormulas } from "../../sheets/vocabulary/pipe.js";
import { formulaValues } from "../support/formula-value.js";

const value = (text: string) => formulaValues(pipeFormulas, [text])[0] as number;
const off = (found: number, expected: number) => Math.abs(found / expected - 1);

/** Outside diameter and least wall, in: ASTM D1785, Schedule 40, as reproduced. */
const pipes: Record<string, [number, number]> = {
  "1-1/4": [1.66, 0.14],
  "1-1/2": [1.9, 0.145],
  "2": [2.375, 0.154],
  "3": [3.5, 0.216],
  "4": [4.5, 0.237],
  "6": [6.625, 0.28],
};
const bore = (size: string) => {
  const [outside, wall] = pipes[size] as [number, number];
  return `BORE(${outside}[in],${wall}[in])`;
};

// Illinois Administrative Code, Title 77, Part 906, Appendix A, Exhibit I: friction loss in
// Schedule 40 plastic pipe, C = 150, ft for 100 ft. Two figures only below 0.5 ft: 5 % there.
describe("friction in Schedule 40 plastic pipe", () => {
  test.each([
    ["1-1/4", 15, 3.06, 0.016],
    ["1-1/4", 20, 5.23, 0.016],
    ["1-1/2", 10, 0.7, 0.03],
    ["1-1/2", 20, 2.46, 0.016],
    ["1-1/2", 30, 5.22, 0.016],
    ["2", 20, 0.74, 0.016],
    ["2", 30, 1.54, 0.016],
    ["2", 50, 3.98, 0.016],
    ["3", 50, 0.58, 0.016],
    ["3", 60, 0.81, 0.016],
    ["3", 100, 2.09, 0.016],
    ["4", 80, 0.37, 0.05],
    ["4", 150, 1.17, 0.016],
    ["6", 200, 0.28, 0.05],
    ["6", 300, 0.58, 0.016],
    ["6", 400, 0.99, 0.016],
  ])("%s in at %d gal/min loses %d ft", (size, flow, loss, tolerance) => {
    const found = value(`HAZEN_WILLIAMS(${flow}[gal/min],100[ft],${bore(size)},150)/1[ft]`);
    expect(off(found, loss)).toBeLessThan(tolerance);
  });
});

// Minnesota Pollution Control Agency pump-selection worksheet, C = 130, nominal bore.
test.each([
  [20, 1.13],
  [30, 2.39],
  [40, 4.07],
  [50, 6.16],
])("a 2.000 in bore with C = 130 at %d gal/min loses %d ft for 100 ft", (flow, loss) => {
  expect(off(value(`HAZEN_WILLIAMS(${flow}[gal/min],100[ft],2[in],130)/1[ft]`), loss)).toBeLessThan(
    0.02,
  );
});

// Common hand form, 10.44 and 4.8704 (from memory): 0.2 % below EPANET's constants.
test("the hand form of Hazen-Williams gives 0.2 % less", () => {
  const hand = (10.44 * 100 * 50 ** 1.852) / (150 ** 1.852 * 2.067 ** 4.8704);
  const found = value("HAZEN_WILLIAMS(50[gal/min],100[ft],2.067[in],150)/1[ft]");
  expect(found / hand).toBeCloseTo(1.002, 3);
});

// Hydraulic Institute Engineering Data Book, friction tables 8 and 9: speed and velocity head.
test.each([
  [1.61, 20, 3.15],
  [1.61, 40, 6.3],
  [1.61, 60, 9.46],
  [2.067, 20, 1.91],
  [2.067, 50, 4.78],
  [2.067, 60, 5.74],
  [2.067, 100, 9.56],
])("in a bore of %d in %d gal/min run at %d ft/s", (inside, flow, speed) => {
  expect(value(`PIPE_SPEED(${flow}[gal/min],${inside}[in])/1[ft/s]`)).toBeCloseTo(speed, 2);
});

test.each([
  [50, 0.355, 3],
  [100, 1.42, 2],
])("%d gal/min in a bore of 2.067 in have a velocity head of %d ft", (flow, head, digits) => {
  const found = value(`VELOCITY_HEAD(PIPE_SPEED(${flow}[gal/min],2.067[in]))/1[ft]`);
  expect(found).toBeCloseTo(head, digits);
});

// K v²/2g, whole: EPANET's 0.02517 for 8/(g π²) would be 0.09 % low.
test("fittings lose K times the velocity head, to 0.001 %", () => {
  const [local, plain] = formulaValues(pipeFormulas, [
    "LOSS_AT(50[gal/min],0,LOCAL_COEFFICIENT(2.5,2.067[in]))/1[ft]",
    "2.5*VELOCITY_HEAD(PIPE_SPEED(50[gal/min],2.067[in]))/1[ft]",
  ]) as [number, number];
  expect(off(local, plain)).toBeLessThan(0.00001);
});

describe("Darcy-Weisbach", () => {
  // Docstring examples of a general fluid-mechanics library: Re 1e5, relative roughness 1e-4.
  test("friction factor by Swamee-Jain", () => {
    expect(value("SWAMEE_JAIN(100000,0.0001[in],1[in])")).toBeCloseTo(0.0184524, 7);
  });

  // The same library: Colebrook 0.0185138661, which Swamee-Jain stands for.
  test("Swamee-Jain lies within 1 % of Colebrook", () => {
    expect(off(value("SWAMEE_JAIN(100000,0.0001[in],1[in])"), 0.0185138661)).toBeLessThan(0.01);
  });

  // Surge-analysis textbook supplement, problem 0.2: L 6 m, D 0.3 m, 2 m/s, 0.12 mm, 1e-6 m²/s.
  test("6 m of 300 mm pipe", () => {
    const factor = "SWAMEE_JAIN(REYNOLDS(2[m/s],300[mm],0.000001[m²/s]),0.12[mm],300[mm])";
    expect(value("REYNOLDS(2[m/s],300[mm],0.000001[m²/s])")).toBeCloseTo(600000, 3);
    expect(value(factor)).toBeCloseTo(0.0169, 4);
    expect(value(`DARCY_LOSS(${factor},6[m],300[mm],2[m/s])/1[m]`)).toBeCloseTo(0.0689, 3);
  });

  // R package "hydraulics", vignette: D 20 in, L 10,560 ft, 4 ft³/s, 0.0005 ft, 60 °F.
  test("two miles of 20 in pipe", () => {
    const speed = "PIPE_SPEED(4[ft³/s],20[in])";
    const factor = `SWAMEE_JAIN(REYNOLDS(${speed},20[in],0.0000122[ft²/s]),0.006[in],20[in])`;
    expect(value(`${speed}/1[ft/s]`)).toBeCloseTo(1.83, 2);
    expect(off(value(factor), 0.0173)).toBeLessThan(0.005);
    expect(off(value(`DARCY_LOSS(${factor},10560[ft],20[in],${speed})/1[ft]`), 5.72)).toBeLessThan(
      0.01,
    );
  });

  // Crane Technical Paper 410, problem 7-15: 100 gal/min through 500 ft of 3 in steel pipe, 400 ft up, four
  // elbows, gate valve, 2-1/2 in lift check valve (K 600 fT in its bore, page A-27), exit: 421 ft.
  test("a main of 3 in steel pipe with fittings", () => {
    const speed = "PIPE_SPEED(100[gal/min],3.068[in])";
    const factor = `SWAMEE_JAIN(REYNOLDS(${speed},3.068[in],0.00001025[ft²/s]),0.0018[in],3.068[in])`;
    const share = 2.469 / 3.068;
    const steps = "CONTRACTION(2.469[in],3.068[in])+ENLARGEMENT(2.469[in],3.068[in])";
    const check = `(600*0.018+${share}*(${steps}))/${share}^4`;
    const head = value(
      `400+(DARCY_LOSS(${factor},500[ft],3.068[in],${speed})+((4*30+8)*0.018+1+${check})*VELOCITY_HEAD(${speed}))/1[ft]`,
    );
    expect(off(head, 421)).toBeLessThan(0.003);
    // the loss alone, against the library's 420.35 ft
    expect(off(head - 400, 20.35)).toBeLessThan(0.05);
  });

  // Crane Technical Paper 410, problem 7-19: 11.5 ft drive 137 gal/min through 10 ft of 3 in pipe with
  // entrance, mitre bend (60 fT) and gate valve, then 20 ft of 2 in pipe and exit; 1.1 cP, 62.364 lb/ft³.
  // The solution brings K from bore to bore by nominal sizes, (2/3)^4, 4 % from the bores': 3 % allowed.
  test("two pipes in series under 11.5 ft", () => {
    const viscosity = "0.00001185[ft²/s]";
    const part = (inside: number, length: number, fittings: string) => {
      const speed = `PIPE_SPEED(137[gal/min],${inside}[in])`;
      const factor = `SWAMEE_JAIN(REYNOLDS(${speed},${inside}[in],${viscosity}),0.0018[in],${inside}[in])`;
      return `DARCY_LOSS(${factor},${length}[ft],${inside}[in],${speed})+(${fittings})*VELOCITY_HEAD(${speed})`;
    };
    const wide = part(3.068, 10, "0.5+(60+8)*0.018");
    const narrow = part(2.067, 20, "CONTRACTION(2.067[in],3.068[in])+1");
    expect(off(value(`(${wide}+${narrow})/1[ft]`), 11.5)).toBeLessThan(0.03);
  });
});

describe("changes of section", () => {
  // Docstring examples of a general fluid-mechanics library, after Crane TP 410.
  test.each([
    ["ENLARGEMENT(0.5[in],1[in])", 0.5625],
    ["CONTRACTION(2[in],3[in])", 0.277777778],
  ])("%s is %d", (text, loss) => {
    expect(value(text)).toBeCloseTo(loss, 8);
  });

  // Crane TP 410, page A-26: K on the speed in the other pipe is K/β⁴ with β small over large.
  test("a step up counts on the speed in the second pipe", () => {
    expect(value("REDUCER(1[in],2[in])")).toBeCloseTo(0.5625 * 16, 9);
    expect(value("REDUCER(3[in],2[in])")).toBeCloseTo(0.277777778, 8);
    expect(value("REDUCER(2[in],2[in])")).toBe(0);
  });
});

describe("FLOW_AT_HEAD undoes LOSS_AT", () => {
  test.each([
    [0.001, 0.0005, 1],
    [0.001, 0, 55],
    [0, 0.0005, 55],
    [0.5, 0.00001, 0.2],
    [0.00001, 3, 12],
    [1e-6, 1e-6, 900],
  ])("friction %d, fittings %d, %d gal/min", (friction, local, flow) => {
    const loss = `LOSS_AT(${flow}[gal/min],${friction},${local})`;
    expect(off(value(`FLOW_AT_HEAD(${loss},${friction},${local})/1[gal/min]`), flow)).toBeLessThan(
      1e-6,
    );
  });

  test("no head, no flow", () => {
    expect(value("FLOW_AT_HEAD(0[ft],0.001,0.001)/1[gal/min]")).toBe(0);
  });
});
