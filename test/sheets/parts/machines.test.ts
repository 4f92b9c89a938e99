import { describe, expect, test } from "vitest";
import { checkBook } from "../../../engine/book/check.js";
import type { RawBook } from "../../../engine/book/raw-book.js";
import { machineLayout } from "../../../sheets/parts/book/machine-layout.js";
import {
  book,
  type Changes,
  changedDemo,
  failingIn,
  shown,
  withMachine,
} from "../../support/changed-demo.js";

describe("the machine whose lifting chart holds", () => {
  test("is the book's first for the method of work, until a job names one", () => {
    const name = (changed: Changes) => shown(changedDemo(changed), "machine_name");
    const said = (code: string) =>
      book.tables.machines?.find((row) => row.code === code)?.description;
    expect(name({})).toBe(said("mini"));
    expect(name({ gate_width: 5 })).toBe(said("micro"));
    expect(name({ machine_choice: "micro" })).toBe(said("micro"));
  });

  test.each<[number, number, number]>([
    [8, 8, 2600],
    [9, 10, 2000],
    [14, 14, 1300],
    [15, 0, 0],
  ])("%f ft away: the next radius of its chart", (working_radius, radius, lift) => {
    const values = changedDemo({ working_radius });
    expect(shown(values, "chart_radius")).toBe(radius);
    expect(shown(values, "machine_lift")).toBe(lift);
  });

  test("a book without one for the method: nothing may be lifted", () => {
    const values = changedDemo(
      {},
      { prices: { ...book, tables: { ...book.tables, machines: [] } } },
    );
    expect(shown(values, "machine_lift")).toBe(0);
    expect(failingIn(values)).toContain("machine_lifts");
  });

  test("a placeholder keeps the bid from standing, but not where the work is by hand", () => {
    const prices = withMachine({ placeholder: true, chart_copied: false });
    expect(failingIn(changedDemo({}, { prices }))).toContain("prices_own");
    const byHand = failingIn(changedDemo({ method_choice: "by hand" }, { prices }));
    expect(byHand).not.toContain("prices_own");
  });
});

test("what is too heavy is told by its stone and its place, and no pot is where there is none", () => {
  const values = changedDemo({ working_radius: 30 });
  expect(shown(values, "machine_lifts_message")).toMatch(
    /^boulders for boulders along the banks: [\d,]+ lb on the hook at 30\.00 ft, /,
  );
  expect(shown(values, "pots_moved")).toBe(true);
  const byHand = changedDemo({ method_choice: "by hand", crew_size: 2 });
  expect(shown(byHand, "crew_moves_stone_message")).toMatch(
    /^boulders for boulders along the banks: one weighs 866 lb, but 2 people move /,
  );
});

describe("the office book's check of a chart", () => {
  const faultsOf = (change: Changes): string => {
    const machine = {
      ...{ code: "mini", description: "Mini", method: "machine", chart_copied: true },
      ...{ radius_1: 8, lift_1: 2000, radius_2: 10, lift_2: 1500, radius_3: 12, lift_3: 1000 },
      ...change,
    };
    const raw: RawBook = {
      ...{ name: "Office", asOf: "2026-05-01", about: null },
      tables: { machines: { rows: [{ at: 1, cells: machine }] } },
      where: ({ name }) => `table "${name}"`,
    };
    try {
      checkBook(raw, [machineLayout], "office.json");
      return "";
    } catch (error) {
      return (error as Error).message;
    }
  };

  test.each<[string, Changes, RegExp]>([
    ["one that is right", {}, /^$/],
    ["not copied", { chart_copied: null }, /nobody says that its chart was copied/],
    ["a placeholder", { chart_copied: null, placeholder: true }, /^$/],
    ["radii out of order", { radius_2: 7 }, /radius_2 is 7, but radius_1 is 8/],
    ["more lift farther out", { lift_3: 1800 }, /lift_3 is 1800, but lift_2 is 1500/],
    ["half a point", { lift_3: null }, /point 3 of the chart lacks/],
    ["a gap", { radius_5: 16, lift_5: 500 }, /point 5 of the chart follows a blank one/],
    ["a method that lifts nothing", { method: "by hand" }, /method .*by hand/],
  ])("%s", (_, change, told) => {
    expect(faultsOf(change)).toMatch(told);
  });
});
