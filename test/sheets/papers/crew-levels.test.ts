import { describe, expect, test } from "vitest";
import { firstRow, pagesAfter } from "../../support/changed-demo.js";

const crewAfter = (changed: Record<string, unknown> = {}) => pagesAfter(changed).crew;

describe("the crew is told at what height things stand", () => {
  test("a pot that stands above the water of its level", () => {
    const raised = crewAfter(firstRow("pipe_lines", { pot_rise: 1.5 }));
    expect(raised).toContain(
      "•  Spring: set its pot so that its water stands 1 ft 6 in above the water of level 1.",
    );
    expect(crewAfter().join("\n")).not.toContain("set its pot");
  });
});

describe("the crew gets a height for the fill float only where it is safe", () => {
  const floats = (changed: Record<string, unknown>) =>
    crewAfter(changed).filter((line) => line.includes("ill float"));
  const withheld = "•  Fill float: not to be set yet, see STOP.";

  test("where it is", () => {
    expect(floats({})).toEqual([
      expect.stringMatching(/^• {2}Fill float: while the pump runs it shuts at .* below the rim\./),
    ]);
  });

  test.each([
    ["so high that a stop spills", { override_float: 4 }, /a stop would spill \d+ gal/],
    ["so low that the pump draws air", { override_float: 46 }, /where the pump needs/],
    [
      "with water coming back that nobody has counted",
      firstRow("pipe_lines", { siphon_stop: null, pot_depth: 0 }),
      /through Spring is not counted/,
    ],
  ])("%s", (_, changed, stop) => {
    expect(floats(changed)).toEqual([expect.stringMatching(stop), withheld]);
  });

  test("and no bid stands while siphoned water is not counted", () => {
    const failed = (changed: Record<string, unknown>) => pagesAfter(changed).value("checks_failed");
    const uncounted = firstRow("pipe_lines", { siphon_stop: null, pot_depth: 0 });
    expect(failed(uncounted)).toBe(Number(failed({})) + 1);
  });
});
