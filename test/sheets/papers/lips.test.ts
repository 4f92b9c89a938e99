import { describe, expect, test } from "vitest";
import { pagesAfter } from "../../support/changed-demo.js";

const lip = (name: string, look: string, more: Record<string, unknown> = {}) => ({
  name,
  level: 1,
  width: 2,
  drop: 1.5,
  lip_type: "sharp edge",
  look,
  ...more,
});
const oneLevel = (falls: readonly Record<string, unknown>[]) => ({
  falls,
  pools: [],
  runs: [],
  pipe_lines: [{ name: "Only", outlet_level: 1, pipe_size: "3 in", length: 5 }],
});

describe("lips of one level", () => {
  test("by hand: four times the water of an equal lip stands 2.52 times as deep", () => {
    // A heavy sheet takes 200 gal/h for each inch of lip, a light curtain 50. Over a lip the flow goes
    // with depth^1.5, so four times the flow is 4^(2/3) = 2.5198 times as deep. With 3.33 in feet and
    // seconds (Francis): 200 * 12 gal/h a foot = 2400 * 231 / 1728 / 3600 = 0.08912 ft³/s a foot,
    // (0.08912 / 3.33)^(2/3) = 0.08947 ft = 1.074 in; the light one 1.074 / 2.5198 = 0.426 in. The
    // light one stands 0.647 in higher: 5/8 in, by eighths.
    const { crew, value } = pagesAfter(
      oneLevel([lip("Heavy", "heavy sheet"), lip("Light", "thin sheet")]),
    );
    const asWanted = (value("falls.actual_flow[1]") as number) / ((2 * 12 * 200) / 60);
    const scale = asWanted ** (2 / 3);
    expect(value("falls.lip_raised[1]")).toBe(0);
    expect((value("falls.lip_raised[2]") as number) / scale).toBeCloseTo(0.647, 2);
    expect(crew).toContain("•  Heavy: 2 ft, sharp edge, one stone; the lowest of level 1.");
    expect(crew).toContain(
      "•  Light: 2 ft, sharp edge, one stone; 5/8 in above the lowest of level 1.",
    );
  });

  test("so set, one level of water gives each lip its share", () => {
    const falls = [lip("A", "full sheet"), lip("B", "thin sheet", { width: 3.5 })];
    const { value } = pagesAfter(oneLevel(falls));
    const of = (column: string, row: number) => value(`falls.${column}[${row}]`) as number;
    const level = of("lip_raised", 1) + of("lip_depth", 1);
    expect(of("lip_raised", 2) + of("lip_depth", 2)).toBeCloseTo(level, 9);
    const flow = (row: number, width: number) => width * (level - of("lip_raised", row)) ** 1.5;
    const share = flow(1, 2) / (flow(1, 2) + flow(2, 3.5));
    expect(share).toBeCloseTo(of("share", 1), 6);
  });

  test("a lip alone on its level, or equal ones, need no raising", () => {
    expect(pagesAfter(oneLevel([lip("Alone", "full sheet")])).crew.join("\n")).not.toMatch(
      /lowest of level/,
    );
    const equal = pagesAfter(oneLevel([lip("A", "full sheet"), lip("B", "full sheet")])).crew;
    expect(equal).toContain("•  A: 2 ft, sharp edge, one stone; the lowest of level 1.");
    expect(equal).toContain("•  B: 2 ft, sharp edge, one stone; the lowest of level 1.");
  });
});
