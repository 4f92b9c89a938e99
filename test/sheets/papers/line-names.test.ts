import { expect, test } from "vitest";
import { changedDemo, demoRows, model } from "../../support/changed-demo.js";
import { linesOf, pageCells } from "../../support/page-cells.js";

/** The lines of Hand-over that tell how a valve is set, of a job whose lines have these names. */
function valves(...names: string[]): string[] {
  const [first, ...rest] = demoRows("pipe_lines");
  const pipe_lines = [first, ...rest].map((row, i) => ({
    ...row,
    ...(names[i] !== undefined && { name: names[i] }),
  }));
  const values = changedDemo({ pipe_lines });
  return pageCells(model, "handOver")
    .flatMap((cell) => linesOf(cell, String(values[cell.index] ?? "")))
    .filter((line) => line.includes("(planned: "));
}

test("the owner reads a line by its name, and the word line once, named or not", () => {
  const [named, unnamed, numbered] = valves("Spring", "Line", "line 2");
  expect(named).toMatch(/Line Spring \(planned: /);
  expect(unnamed).toMatch(/^\W*Line \(planned: /);
  expect(numbered).toMatch(/^\W*line 2 \(planned: /);
});

test("a pool's name that merely begins with those letters is no line yet", () => {
  expect(valves("Lined pool")[0]).toContain("Line Lined pool (planned: ");
});
