import { describe, expect, it } from "vitest";
import {
  describeDimension,
  dimensionless,
  divideDimensions,
  multiplyDimensions,
  raiseDimension,
  sameDimension,
} from "../../../engine/units/dimension.js";

const flow = { length: 3, time: -1 };

describe("dimensions", () => {
  it("multiplies, divides and raises by exponents", () => {
    expect(multiplyDimensions(flow, { time: 1 })).toEqual({ length: 3 });
    expect(divideDimensions(flow, { length: 2 })).toEqual({ length: 1, time: -1 });
    expect(divideDimensions(flow, flow)).toEqual({});
    expect(raiseDimension({ length: 2, time: -2 }, 0.5)).toEqual({ length: 1, time: -1 });
    expect(raiseDimension(flow, 0)).toEqual({});
  });

  it("takes thirds as thirds", () => {
    const cubeRoot = raiseDimension({ length: 1 }, 1 / 3);
    expect(sameDimension(raiseDimension(cubeRoot, 3), { length: 1 })).toBe(true);
    expect(sameDimension(cubeRoot, { length: 1 })).toBe(false);
  });

  it("are described in words", () => {
    expect(describeDimension(dimensionless)).toBe("a plain number");
    expect(describeDimension(flow)).toBe("length^3/time");
    expect(describeDimension({ money: 1, time: -1 })).toBe("money/time");
    expect(describeDimension({ time: -1 })).toBe("1/time");
    expect(describeDimension({ mass: 1, length: -1, time: -2 })).toBe("mass/length/time^2");
  });
});
