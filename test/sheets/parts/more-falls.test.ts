import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test, vi } from "vitest";
import { type PageName, pageCells } from "../../support/page-cells.js";

// One number is changed, as somebody would in the file; everything is built from it afresh.
vi.mock("../../../sheets/parts/capacity.js", async (original) => {
  const { capacity } = await original<typeof import("../../../sheets/parts/capacity.js")>();
  return { capacity: { ...capacity, falls: 14 } };
});

const { readOfficeBook } = await import("../../../engine/book/read.js");
const { valuesOf } = await import("../../../engine/book/values.js");
const { calculate } = await import("../../../engine/evaluate/calculate.js");
const { modelOf } = await import("../../../engine/template/models.js");
const { layoutOf } = await import("../../../engine/template/office-layout.js");
const { waterfall } = await import("../../../sheets/templates/waterfall.js");
const { demoFolder } = await import("../../support/demo.js");

const model = modelOf(waterfall, "us");
const book = await readOfficeBook(join(demoFolder, "office-book.json"), layoutOf(waterfall));
const demo = JSON.parse(readFileSync(join(demoFolder, "garden-corner.json"), "utf8"));

const fall = (i: number) => ({
  name: `Fall number ${i}`,
  level: i,
  width: 1.5,
  drop: i === 14 ? 1.25 : 0.5,
  look: "normal sheet",
  lip_type: "flat stone",
});

/** The demo with so many falls, one under another, calculated by both evaluators. */
function withFalls(many: number) {
  const falls = Array.from({ length: many }, (_, i) => fall(i + 1));
  const values = calculate(
    model,
    valuesOf(model, { ...demo, inputs: { ...demo.inputs, falls } }, book),
  );
  const value = (id: string) => values[model.byId.get(id)?.index ?? -1];
  const number = (id: string) => value(id) as number;
  const column = (name: string) =>
    model.cells.filter((cell) => cell.name === name).map(({ index }) => values[index]);
  const lines = (page: PageName) =>
    pageCells(model, page).map(({ index }) => String(values[index]));
  return { value, number, column, lines };
}

describe("a bid of 14 falls, where the capacity says 14", () => {
  const [twelve, all] = [withFalls(12), withFalls(14)];

  test("each table of falls and levels has 14 rows", () => {
    const long = [...model.tables.values()].filter(
      ({ name, block }) => [name, block.beside].includes("falls") || name === "levels",
    );
    expect(long.map(({ block }) => block.rows)).toEqual(long.map(() => 14));
    expect(long.length).toBeGreaterThan(2);
  });

  test("the last falls are fed, and the pump lifts their drop", () => {
    expect(all.number("falls.design_flow[14]")).toBeGreaterThan(0);
    expect(all.number("falls.throw[14]")).toBeGreaterThan(0);
    expect(all.number("total_drop") - twelve.number("total_drop")).toBeCloseTo(1.75, 6);
    expect(all.value("levels.in_use[14]")).toBe(true);
  });

  test("liner: a piece each, one that takes liner", () => {
    const names = all.column("liner_pieces.name");
    expect(names).toContain("Fall number 13");
    const last = names.indexOf("Fall number 14") + 1;
    expect(all.number(`liner_pieces.width[${last}]`)).toBeGreaterThan(0);
    expect(all.number("liner_area_needed")).toBeGreaterThan(twelve.number("liner_area_needed"));
  });

  test("stone: lips and faces", () => {
    expect(all.number("stone_tons")).toBeGreaterThan(twelve.number("stone_tons"));
  });

  test.each(["crew", "proposal"] as const)("the page %s names both", (page) => {
    const lines = all.lines(page);
    for (const name of ["Fall number 13", "Fall number 14"]) {
      expect(lines.some((line) => line.includes(name))).toBe(true);
      expect(twelve.lines(page).some((line) => line.includes(name))).toBe(false);
    }
  });

  test("labor and price", () => {
    const hours = (of: typeof all) =>
      of.number(
        `tasks.hours[${of.column("tasks.task").indexOf("Set out falls, build their base") + 1}]`,
      );
    expect(hours(all) / hours(twelve)).toBeCloseTo(14 / 12, 6);
    expect(all.number("total_cost")).toBeGreaterThan(twelve.number("total_cost"));
  });

  test("checks look at the last row", () => {
    expect(all.value("falls.name_unique[14]")).toBe(true);
    expect(all.value("falls.flow_enough[14]")).toBe(
      all.number("falls.actual_flow[14]") >=
        all.number("least_flow_share") * all.number("falls.design_flow[14]"),
    );
  });
});
