import { describe, expect, test } from "vitest";
import { beds } from "../../sheets/tables/beds.js";
import { channelFormulas } from "../../sheets/vocabulary/channel.js";
import { formulaValues } from "../support/formula-value.js";

const rowsOfBeds = beds.data ?? [];
const value = (text: string) => formulaValues(channelFormulas, [text])[0] as number;

// Manning's formula by hand: 4 ft wide, 2 ft deep, n 0.013, slope 0.001; area 8, wetted edge 8, radius 1.
test("a channel whose hydraulic radius is 1 ft", () => {
  const flow = value("MANNING_FLOW(2[ft],4[ft],0,0.013,0.001)/1[ft³/s]");
  expect(flow).toBeCloseTo((1.486 / 0.013) * 8 * Math.sqrt(0.001), 9);
});

describe("three passes find Manning's depth", () => {
  test.each([
    [0.1, 3, 0],
    [0.5, 3, 1],
    [1.5, 2, 3],
    [2, 0.5, 0],
    [0.02, 10, 2],
    [3, 0.5, 6],
  ])("%d ft in a bed of %d ft, sides %d to 1", (depth, width, side) => {
    const flow = `MANNING_FLOW(${depth}[ft],${width}[ft],${side},0.04,0.02)`;
    const section = `MANNING_SECTION(${flow},0.04,0.02)`;
    let found = value(`WIDE_DEPTH(${section},${width}[ft])/1[ft]`);
    for (let pass = 0; pass < 3; pass += 1) {
      found = value(`MANNING_PASS(${found}[ft],${section},${width}[ft],${side})/1[ft]`);
    }
    expect(found / depth).toBeCloseTo(1, 5);
  });
});

/** Depths tried at a time. */
const trials = 50;

/**
 * Depth of a wide channel that carries a flow per width over stone, in feet: between depths that carry less and more by
 * STREAM_FLOW, many at a time, each time closer together.
 */
function depthByTrial(flow: number, stone: number, slope: number): number {
  let [low, high] = [1e-4, 100];
  for (let round = 0; round < 3; round += 1) {
    const step = (high / low) ** (1 / (trials + 1));
    const depths = Array.from({ length: trials }, (_, i) => (low as number) * step ** (i + 1));
    const carried = formulaValues(
      channelFormulas,
      depths.map((y) => `STREAM_FLOW(${y}[ft²],${y}[ft],${stone}[ft],${slope})/1[ft³/s]`),
    );
    const enough = carried.findIndex((one) => one >= flow);
    const at = enough < 0 ? trials : enough;
    [low, high] = [depths[at - 1] ?? low, depths[at] ?? high];
  }
  expect(high / low).toBeLessThan(1.001);
  return low;
}
// Ferguson 2007, Water Resources Research 43, W05427: √(8/f) = a1 a2 x / √(a1² + a2² x^(5/3)) with
// a1 6.5, a2 2.5 and x depth over D84. Its limits as the abstract gives them: a roughness layer
// shallow, Manning-Strickler (power 1/6) deep.
describe("water over stone", () => {
  const resistance = (times: number) => value(`STONE_RESISTANCE(${times}[ft],1[ft])`);

  test("as deep as its stone: 16.25/√48.5 by hand", () => {
    expect(resistance(1)).toBeCloseTo(16.25 / Math.sqrt(48.5), 12);
  });

  test.each([0.001, 0.003, 0.01])("a roughness layer at %d of its stone: 2.5 x", (x) => {
    expect(resistance(x) / (2.5 * x)).toBeCloseTo(1, 3);
  });

  test.each([1e4, 1e5])("Manning-Strickler at %d times its stone: 6.5 x^(1/6)", (x) => {
    expect(resistance(x) / (6.5 * x ** (1 / 6))).toBeCloseTo(1, 3);
  });

  test.each([0.01, 0.3, 1, 4, 30])("the power of the radius at %d of the stone", (x) => {
    // by differences: speed is √radius times the resistance
    const step = 1e-4;
    const [above, below] = [resistance(x * (1 + step)), resistance(x * (1 - step))];
    const slope = 0.5 + Math.log(above / below) / Math.log((1 + step) / (1 - step));
    expect(value(`RADIUS_POWER(${x}[ft],1[ft])`)).toBeCloseTo(slope, 6);
  });

  // Rickenmann and Recking 2011, Water Resources Research 47, W07538: equation 22, the same law
  // solved for the speed at a flow per width; read in a research institute's published program.
  test.each([
    [0.01, 0.333, 0.05],
    [0.05, 0.333, 0.02],
    [0.08, 0.667, 0.04],
    [0.2, 0.083, 0.03],
    [1, 0.333, 0.01],
    [5, 0.083, 0.001],
  ])(
    "%d ft³/s a foot over stone of %d ft at slope %d: both ways within a fiftieth",
    (q, stone, slope) => {
      const explicit = value(`STREAM_START(${q}[ft³/s],1[ft],${stone}[ft],${slope})/1[ft]`);
      expect(Math.abs(explicit / depthByTrial(q, stone, slope) - 1)).toBeLessThan(0.02);
    },
  );

  // n = D^(1/6)/(6.5 √g), in metres: the size in mortar that stands for Manning's n of the table.
  test.each(
    rowsOfBeds
      .filter(({ voids }) => voids === 0)
      .map((row) => [row.name, row.stone_size, row.roughness]),
  )("%s: its size is that of its Manning's n", (_, inches, roughness) => {
    const size = Number(inches) * 0.0254;
    expect(
      Math.abs(size ** (1 / 6) / (6.5 * Math.sqrt(9.81)) / Number(roughness) - 1),
    ).toBeLessThan(0.01);
  });

  // Chow, Open-Channel Hydraulics, 1959, table 5-6: least, normal, greatest. Masonry from memory.
  test.each([
    ["troweled mortar", 0.011, 0.013, 0.015],
    ["stone set in mortar", 0.017, 0.025, 0.03],
    ["gravel", 0.022, 0.025, 0.03],
    ["laid stone, dry", 0.023, 0.032, 0.035],
    ["cobble", 0.03, 0.04, 0.05],
    ["cobble and boulders", 0.04, 0.05, 0.07],
  ])("%s: Chow's normal n", (name, least, normal, greatest) => {
    const n = Number(rowsOfBeds.find((row) => row.name === name)?.roughness);
    expect(n).toBe(normal);
    expect(n).toBeGreaterThan(least);
    expect(n).toBeLessThan(greatest);
  });
});

test("Froude number 1 at critical depth", () => {
  // rectangular: critical speed is √(g y)
  const speed = Math.sqrt(32.174 * 0.5);
  expect(value(`FROUDE(${speed}[ft/s],1[ft²],2[ft])`)).toBeCloseTo(1, 9);
});
