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
