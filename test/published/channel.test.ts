import { describe, expect, test } from "vitest";
import { channelFormulas } from "../../sheets/formulas/channel.js";
import { formulaValues } from "../support/formula-value.js";

const value = (text: string) => formulaValues(channelFormulas, [text])[0] as number;

// Manning's formula by hand: 4 ft wide, 2 ft deep, n 0.013, slope 0.001; area 8, wetted edge 8, radius 1.
test("a channel whose hydraulic radius is 1 ft", () => {
  const flow = value("MANNING_FLOW(2[ft],4[ft],0,0.013,0.001)/1[ft³/s]");
  expect(flow).toBeCloseTo((1.486 / 0.013) * 8 * Math.sqrt(0.001), 9);
});

describe("three passes find the depth", () => {
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
      found = value(`DEPTH_PASS(${found}[ft],${section},${width}[ft],${side})/1[ft]`);
    }
    expect(found / depth).toBeCloseTo(1, 5);
  });
});

test("Froude number 1 at critical depth", () => {
  // rectangular: critical speed is √(g y)
  const speed = Math.sqrt(32.174 * 0.5);
  expect(value(`FROUDE(${speed}[ft/s],1[ft²],2[ft])`)).toBeCloseTo(1, 9);
});
