import { describe, expect, test } from "vitest";
import { linesOf, pageCells } from "../../support/page-cells.js";
import { bubblingDemo } from "../failing/bubbling.js";

/*
 * Three stones over one basin, on paper: the figures of the demo worked out from first principles and the sources
 * named in the lines, not from the sheets' own cells.
 */
const { changedDemo, shown } = bubblingDemo;
const values = changedDemo({});
const at = (id: string) => shown(values, id) as number;

const g = 32.174;
const stones = [
  { tall: 40, wide: 20, deep: 18, over: 0.5, hole: 2.5, share: 0.8, along: 1.75, across: 3 },
  { tall: 28, wide: 24, deep: 20, over: 1, hole: 2.5, share: 0.7, along: 4.25, across: 3.6 },
  { tall: 16, wide: 26, deep: 20, over: 1, hole: 2, share: 0.7, along: 6.4, across: 3.7 },
] as const;
const rows = stones.map((stone, i) => [i + 1, stone] as const);

describe("flow of a look", () => {
  // USBR Water Measurement Manual, chapter 14, vertical pipes: a weir up to 0.37 of the mouth, a jet from 1.4 of it
  const weir = (d: number, h: number) => 6.17 * d ** 1.25 * h ** 1.35;
  const jet = (d: number, h: number) => 5.01 * d ** 1.99 * h ** 0.53;

  test("a film of 0.5 in over 2.5 in wells up as over a weir: 7.6 gal/min", () => {
    expect(0.5 / 2.5).toBeLessThan(0.37);
    expect(weir(2.5, 0.5)).toBeCloseTo(7.6, 1);
    expect(at("bubblers.look_flow[1]")).toBeCloseTo(weir(2.5, 0.5), 9);
  });

  test.each([
    [2, 2.5],
    [3, 2],
  ])(
    "a dome of 1 in, row %i, lies between weir and jet, on a straight line of logarithms",
    (row, d) => {
      const [low, high] = [0.37 * d, 1.4 * d];
      const part = Math.log(1 / low) / Math.log(high / low);
      const between = weir(d, low) * (jet(d, high) / weir(d, low)) ** part;
      expect(at(`bubblers.look_flow[${row}]`) / between).toBeCloseTo(1, 3);
      expect(weir(d, low)).toBeLessThan(between);
      expect(between).toBeLessThan(jet(d, high));
    },
  );

  test("the pump is chosen for 15 % more, which is what the law is uncertain by", () => {
    const looks = [1, 2, 3].reduce((sum, row) => sum + at(`bubblers.look_flow[${row}]`), 0);
    expect(at("total_design_flow")).toBeCloseTo(1.15 * looks, 6);
    expect(looks).toBeCloseTo(39.4, 1);
  });
});

describe.each(rows)("stone %i", (row, stone) => {
  const feet = (inches: number) => inches / 12;

  test("stands as high over the running water as rim, stone and water over it", () => {
    expect(at(`pipe_lines.height[${row}]`)).toBeCloseTo(feet(10 + stone.tall + stone.over), 9);
  });

  test("weighs its share of the box at the density of field stone, 165 lb/ft³", () => {
    const box = feet(stone.tall) * feet(stone.wide) * feet(stone.deep);
    expect(at(`bubblers.weighs[${row}]`)).toBeCloseTo(box * stone.share * 165, 5);
  });

  test("is wet by a film after Nusselt, four times as thick on rough stone", () => {
    const flow = at(`pipe_lines.actual_flow[${row}]`) / 448.831;
    const around = (Math.PI / 2) * feet(stone.wide + stone.deep);
    const film = ((3 * 1.217e-5 * flow) / around / g) ** (1 / 3);
    const gallons = 4 * film * around * feet(stone.tall) * 7.48052;
    expect(at(`bubblers.water_running[${row}]`)).toBeCloseTo(gallons, 4);
    expect(gallons).toBeLessThan(1.5);
  });

  test("splashes as far as its foot's splash, or its drops in free fall and wind", () => {
    const share = row === 1 ? 0 : 0.15;
    const fall = feet(stone.tall + stone.over);
    const time = Math.sqrt((2 * fall) / g);
    const thrown = share * Math.sqrt(2 * g * feet(stone.over)) * time;
    // the demo names no place: 4.5 ft/s of wind as measured, half of it taken up
    const drift = share > 0 ? 0.5 * at("wind_at_water") * time : 0;
    const foot = feet(Math.max(stone.wide, stone.deep)) / 2 + 0.5;
    expect(at(`bubblers.splash[${row}]`)).toBeCloseTo(Math.max(foot, thrown + drift), 6);
    const edge = Math.min(stone.along, 8 - stone.along, stone.across, 5.5 - stone.across);
    expect(at(`bubblers.edge[${row}]`)).toBeCloseTo(edge, 9);
  });
});

test("on its pier the column loads the ground with itself, a quarter for doubt, and 3 ft of block", () => {
  const [column] = stones;
  const weight = (column.tall * column.wide * column.deep * 0.8 * 165) / 1728;
  const pier = (16 / 12) ** 2;
  const load = (1.25 * weight + pier * 3 * 140) / pier;
  expect(at("bubblers.pressure[1]")).toBeCloseTo(load, 5);
  expect(at("bubblers.bears_most[1]")).toBe(1500);
  // 36 in of 8 in courses, two blocks each
  expect(at("pier_blocks")).toBe(2 * Math.ceil(36 / 8));
});

test("the head at the manifold is the hungriest line's: height, friction, fittings and exit", () => {
  // Hazen-Williams with C 150; Crane TP 410: two elbows 30 fT, tee's branch 60 fT, ball valve 3 fT, exit 1
  const required = rows.map(([row, stone]) => {
    const [bore, fT] = row === 3 ? [1.66 - 0.28, 0.022] : [1.9 - 0.29, 0.021];
    const flow = at(`pipe_lines.design_flow[${row}]`);
    const length = [8, 9, 10][row - 1] as number;
    const friction = (10.4623 * length * flow ** 1.852) / (150 ** 1.852 * bore ** 4.871);
    const main = 2.375 - 2 * 0.154;
    const fittings = (60 + 2 * 30 + 3) * fT + 0.5 * (1 - (bore / main) ** 2) + 1;
    const speed = (0.40852 * flow) / bore ** 2;
    return (10 + stone.tall + stone.over) / 12 + friction + (fittings * speed ** 2) / (2 * g);
  });
  expect(at("highest_head_required") / Math.max(...required)).toBeCloseTo(1, 2);
});

test("what comes back at a stop is the film and what is in pipe and lines: no more", () => {
  const gallons = (length: number, bore: number) =>
    (length * Math.PI * (bore / 12) ** 2 * 7.48052) / 4;
  const inPipes = gallons(6 + 6, 2.067) + gallons(8, 1.61) + gallons(9, 1.61) + gallons(10, 1.38);
  expect(at("drain_back")).toBeCloseTo(inPipes, 1);
  expect(at("water_into_stream")).toBeCloseTo(at("stones_water"), 9);
  expect(at("basin_water_needed")).toBeCloseTo(
    inPipes + at("stones_water") + at("below_pump_minimum") + 4 * at("loss_a_day"),
    1,
  );
});

test("the pier takes its place from the water: a basin without it holds more", () => {
  const bare = changedDemo({
    bubblers: bubblingDemo
      .demoRows("bubblers")
      .map((row, i) => (i === 0 ? { ...row, base: "crates" } : row)),
  });
  // all around the crates is stone, of which 40 % is open
  const lost = (shown(bare, "basin_water_held") as number) - at("basin_water_held");
  expect(lost).toBeGreaterThan(0.4 * (16 / 12) ** 2 * 2.4 * 7.48);
});

describe("an urn", () => {
  const urn = { kind: "urn", urn_weight: 240, urn_across: 16, urn_water: 24 };
  const withUrn = (line: Record<string, unknown> = {}) =>
    changedDemo({
      bubblers: bubblingDemo
        .demoRows("bubblers")
        .map((row, i) => (i === 1 ? { ...row, ...urn } : row)),
      pipe_lines: bubblingDemo
        .demoRows("pipe_lines")
        .map((row, i) => (i === 1 ? { ...row, ...line } : row)),
    });
  const water = (Math.PI / 4) * (16 / 12) ** 2 * 2 * 7.48052;

  test("takes so much for each inch of its rim", () => {
    // a low dome: 20 gal/h for each inch of rim (common practice, no source)
    const flow = shown(withUrn(), "bubblers.look_flow[2]") as number;
    expect(flow).toBeCloseTo((20 * Math.PI * 16) / 60, 6);
  });

  test("runs empty at a stop, unless a valve or a mouth near its rim keeps it", () => {
    const drawn = (line: Record<string, unknown>) => shown(withUrn(line), "siphoned") as number;
    expect(drawn({})).toBeCloseTo(water, 1);
    expect(drawn({ end_below_water: 3 })).toBeCloseTo((water * 3) / 24, 1);
    expect(drawn({ siphon_stop: "check valve" })).toBe(0);
    expect(drawn({ siphon_stop: "air break" })).toBe(0);
  });

  test("stands on its base with its water", () => {
    const full = shown(withUrn(), "bubblers.full[2]") as number;
    expect(full).toBeCloseTo(240 + (water / 7.48052) * 62.4, 0);
  });
});

describe("what the crew reads", () => {
  // each task with what stands beside it, in the order of the page
  const said = pageCells(bubblingDemo.model, "crew").flatMap((cell) =>
    linesOf(cell, String(values[cell.index] ?? "")),
  );
  const line = (words: string) => said.findIndex((one) => one.includes(words));

  test("is in the order of the work: piers, crates, lines, the stone over them, then the stones", () => {
    const places = [
      "Build piers",
      "Set crates",
      "Lay the lines",
      "Fill stone around",
      "Set stones",
    ].map(line);
    expect(places).toEqual([...places].sort((a, b) => a - b));
    expect(places[0]).toBeGreaterThan(0);
  });

  test("tells the float's height, since no line draws off what is not counted", () => {
    expect(line("Fill float: while the pump runs")).toBeGreaterThan(0);
    expect(line("not to be set yet")).toBe(-1);
  });
});
